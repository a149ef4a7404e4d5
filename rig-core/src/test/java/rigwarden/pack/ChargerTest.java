package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChargerTest {
    private static final Load NO_LOAD = new Load.Electronic(0);
    private static final Supply.Charger FLOATING = new Supply.Charger(20, 30, 28.8, 2, true, 28.5);

    /** By hand: 20 A in 30 s is 2/3 A a second, and 300 A·s until it is there. */
    @Test
    void the_current_rises_in_a_straight_line_from_the_moment_of_its_mains() {
        World world = charging(3.3, Supply.Charger.usual());
        double before = world.coulombs();

        for (int second = 1; second <= 30; second++) {
            Rigs.advance(world, 1);
            assertThat(world.sourceAmps(0)).isCloseTo(second * 20 / 30.0, within(1e-6));
        }
        assertThat(world.coulombs() - before).isCloseTo(300, within(1e-6));
        Rigs.advance(world, 60);
        assertThat(world.amps()).isCloseTo(20, within(1e-9));
    }

    /** Closed form: at its own voltage I = (28.8 V − E) / (path + its lead). */
    @Test
    void at_its_own_voltage_the_current_is_what_the_path_lets_through() {
        World world = charging(3.59, Supply.Charger.usual());

        Rigs.advance(world, 60);

        double amps = (28.8 - 8 * 3.59) / (Rigs.ohmsOfEight() + 1e-3);
        assertThat(world.amps()).isCloseTo(amps, within(1e-9));
        assertThat(world.sourceVolts(0)).isCloseTo(28.8, within(1e-9));
        assertThat(world.busVolts()).isCloseTo(28.8 - amps * 1e-3, within(1e-9));
    }

    @Test
    void it_finishes_two_seconds_below_its_finish_current_and_stays_off_until_the_mains_return() {
        World world = nearlyFull(Supply.Charger.usual());

        double last = untilFinished(world);

        assertThat(last).isBetween(1.9, 2.0);
        Rigs.advance(world, 600);
        assertThat(world.sourceAmps(0)).isZero();
        Rigs.relay(world, Line.source(0), false);
        Rigs.advance(world, 1);
        Rigs.relay(world, Line.source(0), true);
        Rigs.advance(world, 10);
        assertThat(world.sourceOn(0)).isTrue();
        assertThat(world.sourceAmps(0)).isCloseTo(10 * 20 / 30.0, within(1e-6));
    }

    @Test
    void a_floating_one_goes_on_at_its_lower_voltage() {
        World world = nearlyFull(FLOATING);
        Rigs.advance(world, 30);
        int below = 0;
        while (world.sourceAmps(0) > 0) {
            Rigs.advance(world, 0.1);
            below += world.sourceAmps(0) > 0 && world.sourceAmps(0) < 2 ? 1 : 0;
        }

        assertThat(below).as("2 s in steps of 0.1 s").isBetween(20, 21);
        assertThat(world.sourceOn(0)).isTrue();
        Rigs.advance(world, 4 * 3600);
        assertThat(world.sourceVolts(0)).isCloseTo(28.5, within(1e-9));
        assertThat(world.sourceAmps(0)).isBetween(0.001, 2.0);
    }

    @Test
    void with_k1_open_it_puts_its_no_load_voltage_on_the_bus_and_does_not_finish() {
        World world = new World(WorldParameters.pack(), eightTimes(0.5));
        Rigs.relay(world, Line.source(0), true);

        Rigs.advance(world, 120);

        assertThat(world.busVolts()).isEqualTo(28.8);
        assertThat(world.sourceAmps(0)).isCloseTo(28.8 / 220, within(1e-9));
        assertThat(world.sourceOn(0)).isTrue();
        assertThat(world.amps()).isZero();
        Rigs.relay(world, Line.source(0), false);
        Rigs.advance(world, 5);
        assertThat(world.busVolts()).isCloseTo(28.8 * Math.exp(-5 / (220 * 30e-3)), within(1e-9));
    }

    @Test
    void a_charger_with_its_ceiling_too_high_shows_it_without_load() {
        World world = new World(WorldParameters.pack(), eightTimes(0.5));
        world.inflict(new Fault.ChargerHigh(0, 0.4));
        Rigs.relay(world, Line.source(0), true);

        Rigs.advance(world, 1);

        assertThat(world.busVolts()).isCloseTo(29.2, within(1e-12));
    }

    @Test
    void a_plain_charger_takes_no_orders() {
        World world = new World(WorldParameters.pack(), eightTimes(0.5));

        assertThatThrownBy(() -> world.source(0, true, 28, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> world.inflict(new Fault.SourceDeaf(0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Supply.Charger(20, 30, 28.8, 20, false, 0))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static World charging(double emfVoltsEach, Supply.Charger charger) {
        World world = Rigs.eight(emfVoltsEach, Rigs.dry(charger, NO_LOAD), Protection.NONE);
        Rigs.join(world, Line.source(0));
        return world;
    }

    private static World nearlyFull(Supply.Charger charger) {
        World world = new World(WorldParameters.pack().withPath(Rigs.dry(charger, NO_LOAD))
                .withProtection(Protection.NONE), eightTimes(0.985));
        Rigs.join(world, Line.source(0));
        return world;
    }

    /** Lives on until it is off and returns the last current that it gave. */
    private static double untilFinished(World world) {
        double last = 0;
        int below = 0;
        while (world.sourceOn(0)) {
            last = world.sourceAmps(0);
            Rigs.advance(world, 0.1);
            below += world.coulombs() > 600 && world.sourceAmps(0) < 2 && world.sourceOn(0) ? 1 : 0;
        }
        assertThat(below).as("2 s in steps of 0.1 s").isBetween(20, 21);
        return last;
    }

    private static double[] eightTimes(double charge) {
        return new double[] {charge, charge, charge, charge, charge, charge, charge, charge};
    }
}
