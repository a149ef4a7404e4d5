package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
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

    /** The same for the second reference rig with short times and tight limits, so that every state comes by. */
    @Test
    void a_copy_of_a_pack_in_any_state_of_its_devices_runs_on_to_the_same_bits() {
        WorldParameters pack = WorldParameters.pack();
        Load.Inverter inverter = new Load.Inverter(1500, 0.9, 25.6, 25.8, 1, 20e-3, 0.5, 0.7, 0.4);
        World world = new World(pack.withPath(pack.path().withSupplies(new Supply.Charger(20, 1, 27.2, 12, true, 26.9))
                .withLoads(new Load.Electronic(0.1), inverter))
                .withProtection(new Protection(3.300, 0.3, 3.296, 3.268, 0.3, 3.272, 1e-3, 3.28, 0.06)),
                new double[] {0.5, 0.52, 0.51, 0.5, 0.49, 0.5, 0.51, 0.5});
        Chance chance = Chance.of(2, "world", "copies");
        int[] seen = new int[6];
        for (int i = 0; i < 1500; i++) {
            World copy = world.copy();
            Chance same = chance.copy();
            actOnPack(world, chance, i);
            actOnPack(copy, same, i);
            assertSame(world, copy);
            assertThat(ofPack(world)).isEqualTo(ofPack(copy));
            seen[0] += world.protectionOpen() ? 1 : 0;
            seen[1] += world.sinkOn(1) ? 1 : 0;
            seen[2] += world.sourceOn(0) ? 1 : 0;
            seen[3] += world.rippleAmps() > 1 ? 1 : 0;
            seen[4] += world.feedback() && !world.protectionOpen() && world.sourceAmps(0) > 19 ? 1 : 0;
            seen[5] += world.sinkOn(1) && world.rippleAmps() == 0 ? 1 : 0;
        }
        assertThat(Arrays.stream(seen)).as("protection open, inverter on, charger on, ripple, full current, pause of the heater")
                .allMatch(times -> times > 20 && times < 1480);
    }

    @Test
    void a_copy_shares_nothing_that_changes() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.5});
        World copy = world.copy();
        Rigs.join(copy, Line.SINK_RELAY);
        copy.inflict(new Fault.LooseJoint(0, true, 1));
        copy.inflict(new Fault.DetachedBead(0));
        copy.inflict(new Fault.BrokenTap(1));
        copy.inflict(new Fault.TapOffset(1, 0.1));
        copy.inflict(new Fault.BalancerOn(1, 0));
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

    private static void actOnPack(World world, Chance chance, int turn) {
        world.line(Line.HEARTBEAT, turn % 2 == 0);
        Line[] lines = {Line.CONTACTOR, Line.PRECHARGE, Line.source(0), Line.sink(0), Line.sink(1)};
        if (chance.nextInt(4) == 0) {
            world.line(lines[chance.nextInt(5)], chance.nextInt(4) > 0);
        }
        if (chance.nextInt(8) == 0) {
            world.sink(0, chance.nextInt(3) == 0, 40 * chance.nextDouble());
        }
        if (turn == 1200) {
            world.inflict(new Fault.ChargerHigh(0, 0.4));
            world.inflict(new Fault.BalancerOn(0.2, 3.3));
            world.inflict(new Fault.TapOffset(4, -0.05));
            world.inflict(new Fault.ProtectionSet(3.40, 3.20));
            world.inflict(new Fault.SinkRunaway(0, 1.2));
            world.inflict(new Fault.BusShort(2));
        }
        world.advanceTo(world.nanos() + chance.nextLong(700_000_000));
    }

    private static double[] ofPack(World world) {
        return new double[] {
            world.sinkAmps(1), world.sinkVolts(1), world.rippleAmps(), world.tapVolts(4), world.tapVolts(8),
            world.charge(7), world.sourceVolts(0), world.protectionOpen() ? 1 : 0, world.sinkOn(1) ? 1 : 0,
            world.sourceOn(0) ? 1 : 0
        };
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
