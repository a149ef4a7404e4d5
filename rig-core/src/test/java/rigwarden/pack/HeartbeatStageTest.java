package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HeartbeatStageTest {
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void the_supply_drops_0_8_s_after_the_last_edge_stuck_high_or_low(boolean level) {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.beat(world, level ? 0.5 : 0.6);
        assertThat(world.coilFeed()).isTrue();
        world.line(Line.CONTACTOR, true);
        world.line(Line.HEARTBEAT, !level);
        world.line(Line.HEARTBEAT, level);
        world.inflict(new Fault.StuckHeartbeat(level));
        long last = world.nanos();
        for (int i = 1; i <= 7; i++) {
            world.advanceTo(last + i * 100_000_000L);
            world.line(Line.HEARTBEAT, i % 2 == 0);
        }
        world.advanceTo(last + 799_999_999);
        assertThat(world.coilFeed()).isTrue();
        world.advanceTo(last + 800_000_000);
        assertThat(world.coilFeed()).isFalse();
        assertThat(world.feedback()).isTrue();
        world.advanceTo(last + 815_000_000);
        assertThat(world.feedback()).isFalse();
        assertThat(world.oracle().lastFeedbackNanos()).hasValue(last + 815_000_000);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void a_stage_that_a_level_holds_lets_go_from_the_other_level_only(boolean held) {
        World world = Rigs.plain(100, 3.3, 1e-3);
        world.inflict(new Fault.HeartbeatHeldBy(held));
        Rigs.beat(world, 0.5);
        world.line(Line.HEARTBEAT, !held);
        world.line(Line.HEARTBEAT, held);
        Rigs.advance(world, 5);
        assertThat(world.coilFeed()).isTrue();

        world.line(Line.HEARTBEAT, !held);
        Rigs.advance(world, 0.9);
        assertThat(world.coilFeed()).isFalse();
    }

    @Test
    void three_edges_bring_it_to_life_and_slow_ones_do_not() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        for (int i = 0; i < 10; i++) {
            world.line(Line.HEARTBEAT, i % 2 == 0);
            Rigs.advance(world, 0.51);
            assertThat(world.coilFeed()).isFalse();
        }
        Rigs.beat(world, 0.2);
        assertThat(world.coilFeed()).isFalse();
        world.line(Line.HEARTBEAT, true);
        assertThat(world.coilFeed()).isTrue();
    }

    @Test
    void a_few_missed_beats_are_tolerated() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.beat(world, 0.5);
        Rigs.advance(world, 0.65);
        assertThat(world.coilFeed()).isTrue();
        world.line(Line.HEARTBEAT, false);
        Rigs.advance(world, 0.79);
        assertThat(world.coilFeed()).isTrue();
    }

    @Test
    void an_open_loop_kills_the_supply_until_it_is_reset() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.beat(world, 0.5);
        world.inflict(new Fault.LoopOpens());
        assertThat(world.coilFeed()).isFalse();
        assertThat(world.loopClosed()).isFalse();
        world.resetLoop();
        assertThat(world.coilFeed()).isTrue();
    }

    @Test
    void a_slow_stage_holds_longer() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.beat(world, 0.5);
        world.inflict(new Fault.SlowHeartbeat(3));
        Rigs.advance(world, 2.8);
        assertThat(world.coilFeed()).isTrue();
        Rigs.advance(world, 0.2);
        assertThat(world.coilFeed()).isFalse();
    }

    @Test
    void an_armed_rig_is_loud_while_the_stage_rests() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        assertThat(world.sounding()).isFalse();
        world.arm(true);
        assertThat(world.sounding()).isTrue();
        Rigs.beat(world, 0.5);
        assertThat(world.sounding()).isFalse();
    }
}
