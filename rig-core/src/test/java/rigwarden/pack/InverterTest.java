package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class InverterTest {
    private static final double WATTS = 1500 / 0.9;
    private static final double LEAD = 2e-3;

    /** The formula of the design's safety page, with all resistance from the cells' emf to its terminals. */
    @Test
    void it_takes_the_current_of_the_formula_for_constant_power() {
        for (double emfEach : new double[] {2.75, 3.0, 3.3, 3.5}) {
            World world = running(emfEach, inverter(21, 24, 0, 0, 0));

            Rigs.advance(world, 1);

            double volts = 8 * emfEach;
            double ohms = Rigs.ohmsOfEight() + LEAD;
            double amps = (volts - Math.sqrt(volts * volts - 4 * ohms * WATTS)) / (2 * ohms);
            assertThat(world.sinkAmps(0)).isCloseTo(amps, within(1e-9));
            assertThat(world.amps()).isCloseTo(-amps, within(1e-9));
            assertThat(world.sinkVolts(0) * world.sinkAmps(0)).isCloseTo(WATTS, within(1e-9));
        }
    }

    @Test
    void its_power_rises_in_a_straight_line() {
        World world = running(3.3, inverter(21, 24, 5, 0, 0));

        for (int second = 1; second <= 5; second++) {
            Rigs.advance(world, 1);
            assertThat(world.sinkVolts(0) * world.sinkAmps(0)).isCloseTo(WATTS * second / 5, within(1e-3));
        }
    }

    /** By hand, soft cells of 0.04 Ω in all: 21 V at the terminals is I = (E − 21)/R, its power 21·I, after 5 s·P/Pmax. */
    @Test
    void it_quits_at_its_low_limit_and_starts_again_three_seconds_after_the_rebound() {
        World world = soft(24.3);
        double ohms = Rigs.ohmsOfEight() - 8e-3 + 40e-3 + LEAD;
        double quits = 5 * 21 * (24.3 - 21) / ohms / WATTS;

        Rigs.advance(world, quits - 0.1);
        assertThat(world.sinkOn(0)).isTrue();
        Rigs.advance(world, 0.2);
        assertThat(world.sinkOn(0)).isFalse();
        assertThat(world.amps()).isCloseTo(0, within(1e-9));
        Rigs.advance(world, 2.7);
        assertThat(world.sinkOn(0)).isFalse();
        Rigs.advance(world, 0.3);
        assertThat(world.sinkOn(0)).isTrue();
        Rigs.advance(world, quits + 0.2);
        assertThat(world.sinkOn(0)).isFalse();
    }

    @Test
    void it_stays_off_when_the_rebound_does_not_reach_the_restart_voltage() {
        World world = soft(23.9);

        Rigs.advance(world, 600);
        assertThat(world.sinkOn(0)).isFalse();
        Rigs.relay(world, Line.sink(0), false);
        Rigs.advance(world, 1);
        Rigs.relay(world, Line.sink(0), true);
        Rigs.advance(world, 1);
        assertThat(world.sinkOn(0)).as("its remote input forgets why it quit").isTrue();
    }

    /** By hand: 26.4 V through 0.2 Ω can give 871 W at the most, at 13.2 V, above the low limit of 10 V. */
    @Test
    void it_quits_when_the_power_cannot_be_drawn_at_all() {
        List<CellParameters> worn = List.of(CellParameters.plain(100, 26.4, 0.2));
        World world = new World(WorldParameters.oneCell().withCells(worn)
                .withPath(Rigs.dry(new Supply.Programmable(), inverter(10, 30, 0, 0, 0))), new double[] {0.5});
        Rigs.join(world, Line.sink(0));

        Rigs.advance(world, 1);

        assertThat(world.sinkOn(0)).isFalse();
        assertThat(world.amps()).isCloseTo(0, within(1e-9));
    }

    /** By hand: 10 mF of the bus and 20 mF of its own, whether it is switched on or not. */
    @Test
    void its_capacitors_are_on_the_bus_while_it_is_off() {
        World world = Rigs.eight(3.3, Rigs.dry(new Supply.Programmable(), inverter(21, 24, 5, 0, 0)),
                Protection.NONE);

        world.inflict(new Fault.Weld(Line.CONTACTOR));

        assertThat(world.sinkOn(0)).isFalse();
        assertThat(world.coulombsOut()).isCloseTo(30e-3 * 26.4, within(1e-9));
    }

    /** By hand: at constant power C(V² − 21.16²)/2P is 1.96 ms from 25.76 V; at the first current it is 2.13 ms. */
    @Test
    void it_empties_its_capacitors_to_its_low_limit_within_milliseconds_when_k1_opens() {
        PathParameters bled = Rigs.dry(new Supply.Programmable(), inverter(21, 24, 0, 0, 0)).withBus(4.7, 10e-3, 220);
        World world = Rigs.eight(3.3, bled, Protection.NONE);
        Rigs.join(world, Line.sink(0));
        Rigs.advance(world, 1);
        double before = world.busVolts();
        world.inflict(new Fault.StuckOpen(Line.CONTACTOR));

        Rigs.advance(world, 1e-3);
        assertThat(world.sinkOn(0)).isTrue();
        assertThat(world.busVolts()).isCloseTo(before - WATTS / before / 30e-3 * 1e-3, within(0.1));
        Rigs.advance(world, 0.95e-3);
        assertThat(world.sinkOn(0)).isTrue();
        Rigs.advance(world, 0.25e-3);
        assertThat(world.sinkOn(0)).isFalse();
        Rigs.advance(world, 0.9978);
        assertThat(world.busVolts()).isCloseTo(21.16 * Math.exp(-0.998 / (220 * 30e-3)), within(0.01));
        assertThat(world.sinkAmps(0)).isZero();
    }

    @Test
    void a_thermostat_switches_the_power_on_and_off() {
        World world = running(3.3, inverter(21, 24, 0, 20, 10));

        for (int second = 1; second < 120; second++) {
            Rigs.advance(world, 1);
            boolean heating = world.sinkAmps(0) > 1;
            assertThat(world.sinkOn(0)).isTrue();
            if (second % 30 != 0 && second % 30 != 20) {
                assertThat(heating).as("after %d s", second).isEqualTo(second % 30 < 20);
            }
        }
    }

    @Test
    void its_ripple_is_a_share_of_its_current_and_needs_a_pack() {
        World world = running(3.3, inverter(21, 24, 0, 0, 0));

        Rigs.advance(world, 1);
        assertThat(world.rippleAmps()).isCloseTo(0.5 * world.sinkAmps(0), within(1e-9));
        world.inflict(new Fault.StuckOpen(Line.CONTACTOR));
        assertThat(world.rippleAmps()).isZero();
    }

    @Test
    void an_inverter_takes_no_orders() {
        World world = running(3.3, inverter(21, 24, 0, 0, 0));

        assertThatThrownBy(() -> world.sink(0, true, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> world.inflict(new Fault.SinkDeaf(0))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> inverter(24, 21, 0, 0, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    private static Load.Inverter inverter(double quit, double restart, double start, double on, double off) {
        return new Load.Inverter(1500, 0.9, quit, restart, start, 20e-3, 0.5, on, off);
    }

    private static World running(double emfVoltsEach, Load.Inverter inverter) {
        World world = Rigs.eight(emfVoltsEach, Rigs.dry(new Supply.Programmable(), inverter), Protection.NONE);
        Rigs.join(world, Line.sink(0));
        return world;
    }

    private static World soft(double emfVolts) {
        CellParameters cell = CellParameters.plain(100, emfVolts / 8, 5e-3);
        World world = new World(WorldParameters.inSeries(8).withCells(Collections.nCopies(8, cell))
                .withPath(Rigs.dry(new Supply.Programmable(), inverter(21, 24, 5, 0, 0))),
                new double[] {0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5});
        Rigs.join(world, Line.sink(0));
        return world;
    }
}
