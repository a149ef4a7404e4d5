package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ProtectionTest {
    /** Opens for charge above 3.65 V after 2 s until 3.50 V, for discharge below 2.50 V after 1 s until 2.90 V. */
    private static final Protection SET = new Protection(3.65, 2, 3.50, 2.50, 1, 2.90, 1e-3, 0, 0);
    private static final Supply.Programmable SOURCE = new Supply.Programmable();
    private static final Load.Electronic SINK = new Load.Electronic(0.1);

    /** By hand: 3.60 V and 1 mΩ is above 3.65 V with more than 50 A; the ramp of 2 kA/s is there after 30 ms. */
    @Test
    void a_cell_above_the_limit_for_the_delay_stops_the_charge_and_lets_the_discharge_through() {
        World world = world(3.60);
        world.source(0, true, 33, 60);

        Rigs.advance(world, 2.0);
        assertThat(world.amps()).as("2 s are not over since the limit was passed").isGreaterThan(59);
        Rigs.advance(world, 0.2);
        assertThat(world.protectionOpen()).isTrue();
        assertThat(world.amps()).isZero();
        assertThat(world.busVolts()).as("what the source puts there").isEqualTo(33);
        assertThat(world.packVolts()).isCloseTo(8 * 3.60, within(1e-9));
        world.source(0, false, 0, 0);
        world.sink(0, true, 20);
        Rigs.advance(world, 0.2);
        assertThat(world.amps()).isCloseTo(-20, within(0.2));
        assertThat(world.protectionOpen()).as("3.58 V is no release").isTrue();
    }

    @Test
    void a_bus_left_above_a_pack_that_may_only_discharge_falls_to_it_and_is_then_held() {
        World world = world(3.60);
        world.source(0, true, 33, 60);
        Rigs.advance(world, 3);
        world.source(0, false, 0, 0);

        Rigs.advance(world, 0.25);
        double falling = 33 * Math.exp(-0.25 / (220 * 10e-3));
        assertThat(world.busVolts()).isCloseTo(falling, within(1e-9));
        double out = world.coulombsOut();
        assertThat(out).isCloseTo(0.01 * 8 * 3.6, within(0.02));
        Rigs.advance(world, 10);
        double amps = 8 * 3.60 / (220 + Rigs.ohmsOfEight() + 1e-3);
        assertThat(world.amps()).as("the bleed, out of the pack").isCloseTo(-amps, within(1e-9));
        double seconds = 10.25 - 220 * 10e-3 * Math.log(33 / (8 * 3.60));
        assertThat(world.coulombsOut() - out).isCloseTo(amps * seconds, within(1e-4));
    }

    /** By hand: 3.49 V at rest is below the release of 3.50 V; with 170 A it is 3.66 V, and opens every 2.1 s. */
    @Test
    void charge_flows_again_when_all_cells_are_below_the_release() {
        World world = world(3.49);
        world.source(0, true, 33, 170);

        int open = 0;
        for (int i = 0; i < 210; i++) {
            Rigs.advance(world, 0.1);
            assertThat(world.amps() == 0).isEqualTo(world.protectionOpen());
            open += world.protectionOpen() ? 1 : 0;
        }
        assertThat(open).isBetween(9, 10);
    }

    @Test
    void a_short_excursion_does_not_open_it() {
        World world = world(3.60);
        for (int i = 0; i < 10; i++) {
            world.source(0, true, 33, 60);
            Rigs.advance(world, 1.8);
            world.source(0, false, 0, 0);
            Rigs.advance(world, 0.3);
            assertThat(world.protectionOpen()).isFalse();
        }
    }

    /** By hand: 2.55 V less 60 A over 1 mΩ is 2.49 V; at rest 2.55 V is no release. */
    @Test
    void a_cell_below_the_limit_stops_the_discharge_and_lets_the_charge_through() {
        World world = world(2.55);
        world.sink(0, true, 60);

        Rigs.advance(world, 1.2);
        assertThat(world.protectionOpen()).isTrue();
        assertThat(world.amps()).isZero();
        assertThat(world.busVolts()).as("emptied by the sink").isLessThan(0.1);
        world.sink(0, false, 0);
        world.source(0, true, 24, 20);
        Rigs.advance(world, 0.2);
        assertThat(world.amps()).isCloseTo(20, within(0.2));
        assertThat(world.protectionOpen()).isTrue();
        world.source(0, false, 0, 0);
        Rigs.advance(world, 0.2);
        assertThat(world.amps()).as("not even the bleed is let out").isZero();
    }

    /** The reference pack with one cell far ahead: opened at 3.65 V, seen as the charger's own voltage on the bus. */
    @Test
    void a_charger_whose_pack_opened_shows_its_own_voltage_and_gives_up_after_two_seconds() {
        World world = new World(WorldParameters.pack(), new double[] {0.9, 0.9, 0.9, 0.995, 0.9, 0.9, 0.9, 0.9});
        Rigs.join(world, Line.source(0));
        while (!world.protectionOpen()) {
            Rigs.advance(world, 0.1);
        }

        assertThat(world.oracle().highestCellVolts()).isBetween(3.65, 3.67);
        assertThat(world.amps()).isZero();
        assertThat(world.busVolts()).isEqualTo(28.8);
        assertThat(world.packVolts()).isLessThan(28.0);
        Rigs.advance(world, 1.8);
        assertThat(world.sourceOn(0)).isTrue();
        Rigs.advance(world, 0.3);
        assertThat(world.sourceOn(0)).isFalse();
        Rigs.advance(world, 60);
        assertThat(world.busVolts()).as("fallen to the pack, which feeds the bleed").isLessThan(28.0);
        assertThat(world.amps()).isCloseTo(-world.busVolts() / 220, within(1e-9));
    }

    @Test
    void an_inverter_whose_pack_opened_empties_the_bus_and_quits() {
        World world = new World(WorldParameters.pack(), new double[] {0.5, 0.5, 0.5, 0.01, 0.5, 0.5, 0.5, 0.5});
        Rigs.join(world, Line.sink(1));
        while (!world.protectionOpen()) {
            Rigs.advance(world, 0.1);
        }

        assertThat(world.amps()).isZero();
        Rigs.advance(world, 0.1);
        assertThat(world.sinkOn(1)).isFalse();
        assertThat(world.busVolts()).isLessThan(21.2);
    }

    @Test
    void pre_charge_too_is_stopped_by_it() {
        World world = world(2.40);
        world.inflict(new Fault.StuckOpen(Line.CONTACTOR));
        Rigs.advance(world, 1.2);
        assertThat(world.protectionOpen()).isTrue();

        Rigs.advance(world, 60);
        world.inflict(new Fault.Weld(Line.PRECHARGE));
        Rigs.advance(world, 5);

        assertThat(world.busVolts()).isCloseTo(0, within(1e-6));
        assertThat(world.amps()).isZero();
    }

    @Test
    void limits_set_elsewhere_open_it_elsewhere() {
        World world = world(3.62);
        world.inflict(new Fault.ProtectionSet(3.75, 2.2));
        world.source(0, true, 34, 120);

        Rigs.advance(world, 10);
        assertThat(world.oracle().highestCellVolts()).isGreaterThan(3.73);
        assertThat(world.protectionOpen()).isFalse();
        world.source(0, true, 34, 140);
        Rigs.advance(world, 2.3);
        assertThat(world.protectionOpen()).as("and 3.62 V is above the release, now 3.60 V").isTrue();
    }

    /** By hand: 0.06 A for an hour is 216 A·s, and none of it goes through the shunt. */
    @Test
    void a_balancer_takes_charge_past_the_shunt() {
        World world = world(3.60);
        world.inflict(new Fault.StuckOpen(Line.CONTACTOR));
        double before = world.coulombs();
        world.inflict(new Fault.BalancerOn(0.06, 3.5));

        Rigs.advance(world, 3600);

        assertThat((0.5 - world.charge(3)) * 360_000 + before).isCloseTo(216, within(1e-6));
        assertThat(world.coulombs()).isEqualTo(before);
        assertThat(world.cellVolts(3)).isCloseTo(3.60 - 0.06 * 1e-3, within(1e-9));
    }

    @Test
    void a_cell_below_its_threshold_is_left_alone_by_the_balancer() {
        World world = world(3.30);
        world.inflict(new Fault.StuckOpen(Line.CONTACTOR));
        double before = world.charge(0);
        world.inflict(new Fault.BalancerOn(0.06, 3.5));

        Rigs.advance(world, 3600);

        assertThat(world.charge(0)).isEqualTo(before);
    }

    @Test
    void a_battery_without_protection_has_nothing_to_set() {
        World world = Rigs.plain(100, 3.3, 1e-3);

        assertThatThrownBy(() -> world.inflict(new Fault.ProtectionSet(3.75, 2.2)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Protection(3.65, 2, 3.65, 2.5, 1, 2.9, 0, 0, 0))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static World world(double emfVoltsEach) {
        World world = Rigs.eight(emfVoltsEach, PathParameters.bench().withSupplies(SOURCE).withLoads(SINK), SET);
        Rigs.join(world, Line.source(0));
        Rigs.relay(world, Line.sink(0), true);
        return world;
    }
}
