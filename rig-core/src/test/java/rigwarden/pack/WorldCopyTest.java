package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WorldCopyTest {
    /** A copy at each of many odd instants, in the middle of lags, ramps and pre-charge, runs on to the same bits. */
    @Test
    void a_copy_at_any_instant_runs_on_to_the_same_bits() {
        World world = new World(WorldParameters.inSeries(3), new double[] {0.97, 0.95, 0.5});
        world.watch(new Threshold.CellAbove(3.45));
        Chance chance = Chance.of(1, "world", "copies");
        int closed = 0;
        for (int i = 0; i < 400; i++) {
            World copy = world.copy();
            Chance same = chance.copy();
            act(world, chance, i);
            act(copy, same, i);
            assertSame(world, copy);
            closed += world.feedback() ? 1 : 0;
        }
        assertThat(closed).isBetween(50, 350);
        assertThat(Math.abs(world.coulombs())).isGreaterThan(100);
    }

    @Test
    void a_copy_shares_nothing_that_changes() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.5});
        World copy = world.copy();
        Rigs.join(copy, Line.SINK_RELAY);
        copy.inflict(new Fault.LooseJoint(0, true, 1));
        copy.inflict(new Fault.DetachedBead(0));
        copy.inflict(new Fault.BrokenTap(1));
        copy.inflict(new Fault.RoomStep(20));
        copy.sink(0, true, 50);
        Rigs.advance(copy, 100);
        Rigs.advance(world, 100);
        World fresh = new World(WorldParameters.oneCell(), new double[] {0.5});
        Rigs.advance(fresh, 100);
        assertSame(world, fresh);
        assertThat(copy.tapVolts(1)).isZero();
    }

    @Test
    void a_copy_of_a_broken_world_stays_broken() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.5});
        Threshold high = new Threshold.CellAbove(3.3);
        world.watch(high);
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        world.inflict(new Fault.StuckOpen(Line.SINK_RELAY));
        world.inflict(new Fault.StuckHeartbeat(false));
        world.inflict(new Fault.SourceDeaf(0));
        world.inflict(new Fault.BrokenTap(1));
        world.inflict(new Fault.HeatBody(0, 50));
        world.line(Line.SOUNDER, true);
        Rigs.advance(world, 5);
        World copy = world.copy();
        for (World each : new World[] {world, copy}) {
            each.line(Line.CONTACTOR, true);
            each.line(Line.SINK_RELAY, true);
            Rigs.beat(each, 1);
            each.line(Line.CONTACTOR, false);
            each.source(0, true, 3.6, 10);
            Rigs.advance(each, 1);
        }
        assertSame(world, copy);
        assertThat(copy.feedback()).isTrue();
        assertThat(copy.coilFeed()).isFalse();
        assertThat(copy.sourceOn(0)).isFalse();
        assertThat(copy.sounding()).isTrue();
        assertThat(copy.tapVolts(1)).isZero();
        assertThat(copy.oracle().hottestNode()).isEqualTo(Node.body(0));
        assertThat(copy.oracle().crossedNanos(high)).isEqualTo(world.oracle().crossedNanos(high));
    }

    private static void act(World world, Chance chance, int turn) {
        world.line(Line.HEARTBEAT, turn % 2 == 0);
        Line[] lines = {Line.CONTACTOR, Line.PRECHARGE, Line.SOURCE_RELAY, Line.SINK_RELAY};
        world.line(lines[chance.nextInt(4)], chance.nextInt(4) > 0);
        if (chance.nextInt(8) == 0) {
            world.source(0, chance.nextBoolean(), 10.8, 60 * chance.nextDouble());
            world.sink(0, chance.nextBoolean(), 60 * chance.nextDouble());
        }
        world.advanceTo(world.nanos() + chance.nextLong(700_000_000));
    }

    private static void assertSame(World one, World other) {
        assertThat(bits(one)).isEqualTo(bits(other));
        assertThat(one.oracle().lastAmpsNanos()).isEqualTo(other.oracle().lastAmpsNanos());
        assertThat(one.oracle().lastFeedbackNanos()).isEqualTo(other.oracle().lastFeedbackNanos());
    }

    private static double[] bits(World world) {
        return new double[] {
            world.nanos(), world.amps(), world.coulombsIn(), world.coulombsOut(), world.joules(), world.busJoules(),
            world.busVolts(), world.packVolts(), world.cellVolts(0), world.charge(0), world.sourceAmps(0),
            world.sinkAmps(0), world.beadCelsius(0), world.beadCelsius(1), world.celsius(Node.body(0)),
            world.celsius(Node.link(0)), world.celsius(Node.CONTACTOR), world.oracle().highestCellVolts(),
            world.oracle().lowestCellVolts(), world.oracle().hottestCelsius(), world.oracle().greatestAmps()
        };
    }
}
