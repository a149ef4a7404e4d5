package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class PathTest {
    private static final double FARADS = 10e-3;
    private static final double BLEED = 220;
    private static final double PRECHARGE = 4.7;

    /** Closed form: V = V∞(1 − e^(−t/τ)), V∞ = E·Rb/(Rb + Rp), τ = C·Rp·Rb/(Rp + Rb). */
    @Test
    void the_bus_charges_through_the_pre_charge_resistor_by_its_exponential() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        world.inflict(new Fault.Weld(Line.PRECHARGE));
        double resistance = PRECHARGE + 1e-3 + 2 * 0.08e-3 + 0.75e-3;
        double end = 3.3 * BLEED / (BLEED + resistance);
        double tau = FARADS * BLEED * resistance / (BLEED + resistance);
        for (double seconds : new double[] {0.01, 0.037, 0.1, 0.25}) {
            world.advanceTo(Math.round(seconds * Rigs.SECOND));
            double bus = end * (1 - Math.exp(-seconds / tau));
            assertThat(world.busVolts()).isCloseTo(bus, within(1e-9));
            assertThat(world.amps()).isCloseTo(-(3.3 - bus) / resistance, within(1e-9));
        }
        double charge = FARADS * world.busVolts();
        assertThat(world.coulombsOut()).isGreaterThan(charge);
        assertThat(world.coulombsOut()).isCloseTo(charge, within(3.3 / BLEED * 0.25));
    }

    @Test
    void one_long_step_of_pre_charge_takes_the_same_charge_as_many_short_ones() {
        World coarse = Rigs.plain(100, 3.3, 1e-3);
        coarse.inflict(new Fault.Weld(Line.PRECHARGE));
        World fine = coarse.copy();
        coarse.advanceTo(Rigs.SECOND / 10);
        for (int i = 1; i <= 100; i++) {
            fine.advanceTo(i * Rigs.SECOND / 1000);
        }
        assertThat(coarse.coulombs()).isCloseTo(fine.coulombs(), within(1e-12));
        assertThat(coarse.busVolts()).isCloseTo(fine.busVolts(), within(1e-12));
    }

    /** Closed form: V = V0·e^(−t/RC) after the contactor opened. */
    @Test
    void an_open_bus_decays_through_its_bleed() {
        World world = closed();
        world.openLoop();
        Rigs.advance(world, 0.015);
        double start = world.busVolts();
        assertThat(start).isCloseTo(3.3, within(1e-3));
        assertThat(world.feedback()).isFalse();
        Rigs.advance(world, 1.7);
        assertThat(world.busVolts()).isCloseTo(start * Math.exp(-1.7 / (BLEED * FARADS)), within(1e-9));
        assertThat(world.amps()).isZero();
    }

    @Test
    void contacts_move_exactly_after_their_lags() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.beat(world, 0.5);
        world.line(Line.CONTACTOR, true);
        world.advanceTo(world.nanos() + 29_999_999);
        assertThat(world.feedback()).isFalse();
        world.advanceTo(world.nanos() + 1);
        assertThat(world.feedback()).isTrue();
        assertThat(world.busVolts()).isCloseTo(3.3, within(1e-3));
        world.line(Line.CONTACTOR, false);
        world.advanceTo(world.nanos() + 14_999_999);
        assertThat(world.feedback()).isTrue();
        world.advanceTo(world.nanos() + 1);
        assertThat(world.feedback()).isFalse();
    }

    /** By hand: the capacitor takes C·V out of the pack at once. */
    @Test
    void closing_onto_an_empty_bus_costs_the_charge_of_its_capacitor() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        assertThat(world.coulombsOut()).isCloseTo(FARADS * world.busVolts(), within(1e-12));
        assertThat((0.5 - world.charge(0)) * 360_000).isCloseTo(world.coulombsOut(), within(1e-9));
    }

    @Test
    void no_source_current_passes_an_open_contact() {
        World world = closed();
        world.source(0, true, 3.6, 40);
        Rigs.advance(world, 0.1);
        assertThat(world.amps()).isCloseTo(-world.busVolts() / BLEED, within(1e-6));
        assertThat(world.sourceAmps(0)).isZero();
        assertThat(world.sourceVolts(0)).isEqualTo(3.6);
        world.inflict(new Fault.Weld(Line.SOURCE_RELAY));
        Rigs.advance(world, 0.1);
        assertThat(world.sourceAmps(0)).isCloseTo(40, within(1e-9));
        world.inflict(new Fault.StuckOpen(Line.CONTACTOR));
        assertThat(world.amps()).isZero();
        assertThat(world.sourceAmps(0)).isCloseTo(3.6 / BLEED, within(1e-9));
        assertThat(world.busVolts()).isEqualTo(3.6);
    }

    /** By hand: 3.3 V over cell, lugs, fuse, shunt, contactor, lead and 0.03 Ω of heater, bleed aside. */
    @Test
    void a_heater_takes_what_its_resistance_takes() {
        WorldParameters p = WorldParameters.oneCell()
                .withPath(PathParameters.bench().withLoads(new Load.Resistor(0.03)));
        World world = new World(p.withCells(List.of(CellParameters.plain(100, 3.3, 1e-3))),
                new double[] {0.5});
        Rigs.join(world, Line.SINK_RELAY);
        world.sink(0, true, 0);
        Rigs.advance(world, 1);
        double ohms = 1e-3 + 2 * 0.08e-3 + 0.75e-3 + 1e-3 + 0.03;
        assertThat(world.sinkAmps(0)).isCloseTo(3.3 / ohms, within(0.01));
        assertThat(world.sinkVolts(0)).isCloseTo(world.sinkAmps(0) * 0.03, within(1e-9));
    }

    /** By hand: 3.3 V less the floor of 0.1 V over 2.91 mΩ of path. */
    @Test
    void an_electronic_sink_takes_no_more_than_the_path_can_drive() {
        World world = Rigs.plain(1000, 3.3, 1e-3);
        Rigs.join(world, Line.SINK_RELAY);
        world.sink(0, true, 1e6);
        Rigs.advance(world, 600);
        double ohms = 1e-3 + 2 * 0.08e-3 + 0.75e-3 + 1e-3;
        assertThat(world.sinkAmps(0)).isCloseTo(3.2 / ohms, within(0.05));
        assertThat(world.sinkVolts(0)).isCloseTo(0.1, within(1e-9));
    }

    @Test
    void a_runaway_source_goes_over_its_voltage_at_twice_its_current() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.join(world, Line.SOURCE_RELAY);
        world.source(0, true, 3.31, 40);
        Rigs.advance(world, 1);
        assertThat(world.sourceAmps(0) - world.busVolts() / BLEED).isCloseTo(10, within(1e-3));
        world.inflict(new Fault.SourceRunaway(0, 0.5));
        Rigs.advance(world, 1);
        assertThat(world.sourceAmps(0)).isCloseTo(80, within(1e-9));
        world.inflict(new Fault.SourceDeaf(0));
        world.source(0, false, 0, 0);
        assertThat(world.sourceOn(0)).isTrue();
    }

    private static World closed() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.beat(world, 0.5);
        world.line(Line.CONTACTOR, true);
        Rigs.advance(world, 0.03);
        return world;
    }
}
