package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The reference night of the design's model page (this project's own first computation), one cell, room 22 °C. */
class NightTest {
    @Test
    void the_first_night_gives_its_two_capacities_and_stays_cool() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.45});
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        world.inflict(new Fault.Weld(Line.SOURCE_RELAY));
        world.inflict(new Fault.Weld(Line.SINK_RELAY));

        charge(world);
        Rigs.advance(world, 7200);
        double slow = discharge(world, 10.5);
        Rigs.advance(world, 7200);
        double hours = charge(world);
        Rigs.advance(world, 7200);
        double fast = discharge(world, 52.5);

        assertThat(slow).isCloseTo(107.17, within(0.5));
        assertThat(fast).isCloseTo(106.27, within(0.5));
        assertThat(hours).isCloseTo(5.1, within(0.15));
        assertThat(world.oracle().hottestCelsius()).isBetween(27.0, 31.0);
        System.out.printf("night 1: %.2f Ah at 0.1 C, charge %.2f h, %.2f Ah at 0.5 C, hottest %.2f °C at %s%n", slow,
                hours, fast, world.oracle().hottestCelsius(), world.oracle().hottestNode());
    }

    @Test
    void the_true_values_of_a_cell_are_found_by_running_it() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.45});
        double ampHours = world.capacityAmpHours(0);
        double ohms = world.ohms10s(0);

        System.out.printf("true capacity %.3f Ah, ten-second resistance %.4f mΩ%n", ampHours, ohms * 1e3);
        assertThat(ampHours).isCloseTo(107.2, within(0.5));
        assertThat(ohms).isBetween(0.30e-3, 0.42e-3);
        assertThat(world.charge(0)).isEqualTo(0.45);
    }

    private static double charge(World world) {
        long start = world.nanos();
        world.source(0, true, 3.60, 21);
        Rigs.advance(world, 60);
        while (world.amps() > 5.25) {
            Rigs.advance(world, 0.1);
        }
        world.source(0, false, 0, 0);
        return (world.nanos() - start) / (double) Rigs.HOUR;
    }

    private static double discharge(World world, double amps) {
        double start = world.coulombs();
        world.sink(0, true, amps);
        while (world.cellVolts(0) > 2.50) {
            Rigs.advance(world, 0.1);
        }
        world.sink(0, false, 0);
        return (start - world.coulombs()) / 3600;
    }
}
