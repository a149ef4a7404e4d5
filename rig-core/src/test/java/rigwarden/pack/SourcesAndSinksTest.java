package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SourcesAndSinksTest {
    private static final Load.Electronic ELECTRONIC = new Load.Electronic(0.1);
    private static final Load.Inverter INVERTER = new Load.Inverter(1500, 0.9, 21, 24, 0, 20e-3, 0.5, 0, 0);
    private static final double WATTS = 1500 / 0.9;

    @Test
    void each_sink_has_its_own_relay_and_current() {
        World world = world(new Supply.Programmable(), ELECTRONIC, ELECTRONIC, new Load.Resistor(2));
        for (int j = 0; j < 3; j++) {
            world.sink(j, true, 10 * (j + 1));
            Rigs.relay(world, Line.sink(j), true);
        }

        Rigs.advance(world, 1);

        assertThat(world.sinkAmps(0)).isCloseTo(10, within(1e-9));
        assertThat(world.sinkAmps(1)).isCloseTo(20, within(1e-9));
        assertThat(world.sinkAmps(2)).isCloseTo(world.busVolts() / 2.002, within(1e-9));
        assertThat(world.amps()).isCloseTo(-30 - world.sinkAmps(2), within(1e-9));
        Rigs.relay(world, Line.sink(1), false);
        assertThat(world.sinkAmps(1)).isZero();
        assertThat(world.sinkVolts(1)).isZero();
        assertThat(world.sinkAmps(0)).isCloseTo(10, within(1e-9));
    }

    /** The inverter sees a bus that charger and sink have moved: its formula holds with what they leave it. */
    @Test
    void charger_sink_and_inverter_at_once_agree_on_one_bus() {
        World world = world(new Supply.Charger(20, 0, 28.8, 2, false, 0), ELECTRONIC, INVERTER);
        world.sink(0, true, 15);
        Rigs.relay(world, Line.source(0), true);
        Rigs.relay(world, Line.sink(0), true);
        Rigs.relay(world, Line.sink(1), true);

        Rigs.advance(world, 1);

        double volts = 26.4 + (20 - 15) * Rigs.ohmsOfEight();
        double ohms = Rigs.ohmsOfEight() + 2e-3;
        double amps = (volts - Math.sqrt(volts * volts - 4 * ohms * WATTS)) / (2 * ohms);
        assertThat(world.sinkAmps(1)).isCloseTo(amps, within(1e-9));
        assertThat(world.amps()).isCloseTo(20 - 15 - amps, within(1e-9));
    }

    /** By hand: two leads of 1 mΩ from 28.8 V and 28.7 V to one bus in front of E and R; two linear equations. */
    @Test
    void two_chargers_at_their_own_voltages_share_as_their_leads_let_them() {
        Supply.Charger strong = new Supply.Charger(200, 0, 28.8, 2, false, 0);
        Supply.Charger weak = new Supply.Charger(200, 0, 28.75, 2, false, 0);
        World world = Rigs.eight(3.5, Rigs.dry(strong, ELECTRONIC).withSupplies(strong, weak), Protection.NONE);
        Rigs.join(world, Line.source(0));
        Rigs.relay(world, Line.source(1), true);

        Rigs.advance(world, 1);

        double ohms = Rigs.ohmsOfEight();
        double bus = (28 / ohms + 28.8 / 1e-3 + 28.75 / 1e-3) / (1 / ohms + 2 / 1e-3);
        assertThat(world.busVolts()).isCloseTo(bus, within(1e-9));
        assertThat(world.sourceAmps(0)).isCloseTo((28.8 - bus) / 1e-3, within(1e-6));
        assertThat(world.sourceAmps(1)).isCloseTo((28.75 - bus) / 1e-3, within(1e-6));
    }

    @Test
    void with_k1_open_the_source_with_the_highest_voltage_holds_the_bus() {
        World world = Rigs.eight(3.3, PathParameters.bench()
                .withSupplies(Supply.Charger.usual(), new Supply.Programmable()), Protection.NONE);
        Rigs.relay(world, Line.source(0), true);
        Rigs.relay(world, Line.source(1), true);

        world.source(1, true, 30, 5);
        Rigs.advance(world, 1);
        assertThat(world.busVolts()).isEqualTo(30);
        assertThat(world.sourceAmps(1)).isCloseTo(30.0 / 220, within(1e-9));
        assertThat(world.sourceAmps(0)).isZero();
        world.source(1, true, 30, 0.1);
        Rigs.advance(world, 10);
        assertThat(world.busVolts()).as("0.1 A cannot hold 30 V over 220 Ω").isEqualTo(28.8);
        assertThat(world.sourceAmps(0) + world.sourceAmps(1)).isCloseTo(28.8 / 220, within(1e-9));
    }

    @Test
    void what_is_not_there_cannot_be_ordered_or_asked() {
        World world = world(new Supply.Programmable(), ELECTRONIC);

        assertThatThrownBy(() -> world.sink(1, true, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> world.line(Line.source(1), true)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Line(Line.Kind.CONTACTOR, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    private static World world(Supply supply, Load... loads) {
        World world = Rigs.eight(3.3, Rigs.dry(supply, loads), Protection.NONE);
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        return world;
    }
}
