package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** By hand: 0.01 s · (10 · rating ÷ current)^5.5 below ten times the rating, squared above; nothing up to 1.6 times. */
class FuseTest {
    private static final double RATED_A = 125;

    private static World shorted(double amps) {
        PathParameters path = Rigs.dry(new Supply.Programmable(), new Load.Electronic(0.1)).withFuse(RATED_A);
        World world = Rigs.eight(3.3, path, Protection.NONE);
        Rigs.relay(world, Line.CONTACTOR, true);
        world.inflict(new Fault.BusShort(8 * 3.3 / amps - Rigs.ohmsOfEight()));
        return world;
    }

    @Test
    void ten_times_its_rating_blows_it_in_ten_milliseconds_and_then_nothing_flows() {
        World world = shorted(1250);

        assertThat(world.amps()).isCloseTo(-1250, within(0.5));
        Rigs.advance(world, 0.0098);
        assertThat(world.fuseBlown()).isFalse();
        World copy = world.copy();
        Rigs.advance(world, 0.0004);
        assertThat(world.fuseBlown()).isTrue();
        assertThat(world.amps()).isZero();
        assertThat(world.feedback()).as("the contactor is still closed").isTrue();
        Rigs.advance(copy, 0.0004);
        assertThat(copy.fuseBlown()).as("a copy remembers how far it had melted").isTrue();
    }

    @Test
    void twice_its_rating_takes_a_minute_and_twenty_times_a_quarter_of_ten_milliseconds() {
        World slow = shorted(250);
        Rigs.advance(slow, 69);
        assertThat(slow.fuseBlown()).isFalse();
        Rigs.advance(slow, 2);
        assertThat(slow.fuseBlown()).isTrue();

        World fast = shorted(2500);
        Rigs.advance(fast, 0.0024);
        assertThat(fast.fuseBlown()).isFalse();
        Rigs.advance(fast, 0.0002);
        assertThat(fast.fuseBlown()).isTrue();
    }

    @Test
    void one_and_a_half_times_its_rating_never_blows_it() {
        World world = shorted(187);

        Rigs.advance(world, 600);

        assertThat(world.fuseBlown()).isFalse();
        assertThat(world.amps()).isLessThan(-150);
    }

    @Test
    void a_sink_that_runs_away_takes_so_many_times_its_order() {
        World world = Rigs.eight(3.3, Rigs.dry(new Supply.Programmable(), new Load.Electronic(0.1)), Protection.NONE);
        Rigs.join(world, Line.sink(0));
        world.sink(0, true, 20);
        world.inflict(new Fault.SinkRunaway(0, 1.5));

        Rigs.advance(world, 1);

        assertThat(world.sinkAmps(0)).isCloseTo(30, within(1e-9));
    }
}
