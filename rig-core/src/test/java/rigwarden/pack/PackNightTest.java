package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * The second reference night of the design's model page (this project's own first computation): eight cells, 3 % apart
 * in charge, plain charger, small sink, inverter, a room from 15 to 23 °C. Switched as a person with a watch would.
 */
class PackNightTest {
    private static final int HIGHEST = 1;
    private static final int LOWEST = 5;
    private static final double[] CHARGES = {0.410, 0.425, 0.415, 0.405, 0.418, 0.395, 0.412, 0.408};

    /** Where a heat run ended, and how warm it was at its warmest. */
    private record HeatRun(double hours, double firstAmps, double lastAmps, double lastVolts, boolean quit,
            double bodyCelsius, double studCelsius, double overRoom, double overOwnCell) {}

    @Test
    void the_second_night_ends_each_step_as_the_reference_does() {
        World world = night(Load.Inverter.usual(), new Room(15, 8 / 29.64), CHARGES);

        double first = charge(world);
        double highest = world.charge(HIGHEST);
        double lowest = world.charge(LOWEST);
        rest(world);
        double slow = slowDischarge(world);
        rest(world);
        double second = charge(world);
        rest(world);
        HeatRun run = heatRun(world);
        rest(world);
        chargeFor(world, 2.1);

        assertThat(first).isCloseTo(3.08, within(0.1));
        assertThat(highest).isCloseTo(0.995, within(0.003));
        assertThat(lowest).isCloseTo(0.960, within(0.008));
        assertThat(slow).isCloseTo(102.5, within(1.5));
        assertThat(second).isCloseTo(5.13, within(0.15));
        assertThat(run.quit()).as("cut off by the lowest cell before the inverter gave up").isFalse();
        assertThat(run.hours()).isCloseTo(1.53, within(0.04));
        assertThat(run.firstAmps()).isCloseTo(62, within(2.0));
        assertThat(run.lastAmps()).isCloseTo(79, within(0.5));
        assertThat(run.lastVolts()).isCloseTo(21.1, within(0.1));
        assertThat(run.bodyCelsius()).isCloseTo(36.4, within(0.5));
        assertThat(run.studCelsius()).isCloseTo(35.8, within(0.5));
        assertThat(run.overRoom()).isCloseTo(14, within(0.5));
        assertThat(run.overOwnCell()).isBetween(0.1, 0.4);
        assertThat(world.nanos() / (double) Rigs.HOUR).isCloseTo(29.64, within(0.3));
        assertThat(world.protectionOpen()).isFalse();
        System.out.printf("night 2: charge %.2f h to %.3f and %.3f, %.2f Ah, charge %.2f h, %s, all %.2f h%n", first,
                lowest, highest, slow, second, run, world.nanos() / (double) Rigs.HOUR);
    }

    @Test
    void a_heat_run_of_equal_cells_ends_when_the_inverter_quits() {
        double[] charges = new double[8];
        Arrays.fill(charges, 0.995);
        World world = night(Load.Inverter.usual(), new Room(21.5, 0), charges);

        HeatRun run = heatRun(world);

        assertThat(run.quit()).isTrue();
        assertThat(lowest(world)).as("rebounded, and was never below the cut-off").isGreaterThan(2.5);
        assertThat(run.lastVolts()).isCloseTo(21.0, within(0.02));
    }

    /** The model page says 38.4 °C, 16 K over the room; this model is 1.7 K warmer, and nobody knows why. */
    @Test
    void two_kilowatts_in_the_same_night_take_the_reference_time_and_currents_until_the_inverter_quits() {
        World world = night(new Load.Inverter(2000, 0.9, 21, 24, 5, 20e-3, 0.5, 0, 0), new Room(15, 8 / 29.64), CHARGES);
        charge(world);
        rest(world);
        slowDischarge(world);
        rest(world);
        charge(world);
        rest(world);

        HeatRun run = heatRun(world);

        System.out.println("night 2 with 2 kW: " + run);
        assertThat(run.hours()).isCloseTo(1.15, within(0.05));
        assertThat(run.firstAmps()).isCloseTo(83, within(2.5));
        assertThat(run.lastAmps()).isCloseTo(106, within(1.0));
        assertThat(run.quit()).isTrue();
        assertThat(run.bodyCelsius()).isBetween(38.4, 41.0);
        assertThat(run.overRoom()).isBetween(16.0, 19.0);
    }

    private static World night(Load inverter, Room room, double[] charges) {
        WorldParameters pack = WorldParameters.pack();
        World world = new World(pack.withRoom(room)
                .withPath(pack.path().withLoads(new Load.Electronic(0.1), inverter)), charges);
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        return world;
    }

    private static void rest(World world) {
        Rigs.advance(world, 7200);
    }

    private static double highest(World world) {
        double high = world.cellVolts(0);
        for (int k = 1; k < 8; k++) {
            high = Math.max(high, world.cellVolts(k));
        }
        return high;
    }

    private static double lowest(World world) {
        double low = world.cellVolts(0);
        for (int k = 1; k < 8; k++) {
            low = Math.min(low, world.cellVolts(k));
        }
        return low;
    }

    private static double charge(World world) {
        long start = world.nanos();
        Rigs.relay(world, Line.source(0), true);
        while (highest(world) < 3.60) {
            assertThat(world.sourceOn(0)).isTrue();
            Rigs.advance(world, 0.1);
        }
        assertThat(world.cellVolts(HIGHEST)).isGreaterThanOrEqualTo(3.60);
        assertThat(world.amps()).as("the ceiling came before any taper").isGreaterThan(19.8);
        Rigs.relay(world, Line.source(0), false);
        return (world.nanos() - start) / (double) Rigs.HOUR;
    }

    private static void chargeFor(World world, double hours) {
        Rigs.relay(world, Line.source(0), true);
        Rigs.advance(world, hours * 3600);
        Rigs.relay(world, Line.source(0), false);
    }

    private static double slowDischarge(World world) {
        double start = world.coulombs();
        Rigs.relay(world, Line.sink(0), true);
        world.sink(0, true, 10.5);
        while (lowest(world) > 2.50) {
            Rigs.advance(world, 0.1);
        }
        assertThat(world.cellVolts(LOWEST)).isLessThanOrEqualTo(2.50);
        Rigs.relay(world, Line.sink(0), false);
        return (start - world.coulombs()) / 3600;
    }

    private static HeatRun heatRun(World world) {
        long start = world.nanos();
        Rigs.relay(world, Line.sink(1), true);
        Rigs.advance(world, 6);
        HeatRun run = new HeatRun(0, world.sinkAmps(1), 0, 0, false, 0, 0, 0, Double.NEGATIVE_INFINITY);
        while (lowest(world) > 2.50 && world.sinkOn(1)) {
            run = warmest(world, run);
            Rigs.advance(world, 0.1);
        }
        boolean quit = !world.sinkOn(1);
        Rigs.relay(world, Line.sink(1), false);
        return new HeatRun((world.nanos() - start) / (double) Rigs.HOUR, run.firstAmps, run.lastAmps, run.lastVolts,
                quit, run.bodyCelsius, run.studCelsius, run.overRoom, run.overOwnCell);
    }

    private static HeatRun warmest(World world, HeatRun run) {
        double body = run.bodyCelsius;
        double stud = run.studCelsius;
        double over = run.overOwnCell;
        for (int k = 0; k < 8; k++) {
            double own = world.celsius(Node.body(k));
            double hot = Math.max(world.celsius(Node.stud(k, true)), world.celsius(Node.stud(k, false)));
            body = Math.max(body, own);
            stud = Math.max(stud, hot);
            over = Math.max(over, hot - own);
        }
        return new HeatRun(0, run.firstAmps, world.sinkAmps(1), world.sinkVolts(1), false, body, stud,
                Math.max(run.overRoom, body - world.celsius(Node.ROOM)), over);
    }
}
