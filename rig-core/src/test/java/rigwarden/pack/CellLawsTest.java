package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class CellLawsTest {
    /** Closed form: u(t) = I·R·(1 − e^(−t/τ)). */
    @Test
    void a_relaxation_rises_by_its_exponential() {
        Cell cell = new Cell(CellParameters.plain(100, 3.3, 1e-3).withRelaxations(2e-3, 30, 0, 600), 0.5, 25);
        for (int i = 1; i <= 900; i++) {
            cell.step(20, 0.1, 25);
            cell.settle(25);
            double exact = 3.3 + 20 * 2e-3 * (1 - Math.exp(-i * 0.1 / 30));
            assertThat(cell.emfVolts(25)).isCloseTo(exact, within(1e-12));
        }
    }

    @Test
    void the_length_of_the_steps_does_not_matter_to_a_relaxation() {
        CellParameters p = CellParameters.plain(100, 3.3, 1e-3).withRelaxations(2e-3, 30, 3e-3, 600);
        Cell fine = new Cell(p, 0.5, 25);
        Cell coarse = new Cell(p, 0.5, 25);
        double fineSum = 0;
        for (int i = 0; i < 1000; i++) {
            fine.step(-20, 0.1, 25);
            fineSum += fine.meanVolts() * 0.1;
        }
        coarse.step(-20, 100, 25);
        assertThat(coarse.emfVolts(25)).isCloseTo(fine.emfVolts(25), within(1e-12));
        assertThat(coarse.meanVolts() * 100).isCloseTo(fineSum, within(1e-9));
    }

    /** Closed form: h = −1 + 2·e^(−γq/Q) on turning from a long charge to discharge. */
    @Test
    void the_hysteresis_turns_with_the_charge_that_passed() {
        CellParameters p = CellParameters.lfp105().withStartHysteresis(1);
        Cell cell = new Cell(p, 0.5, 25);
        Cell still = new Cell(p.withStartHysteresis(0), 0.5, 25);
        for (int i = 0; i < 6000; i++) {
            cell.step(-50, 0.1, 25);
            still.step(-50, 0.1, 25);
        }
        double quiet = -1 + Math.exp(-70 * 50 * 600 / (108 * 3600.0));
        double exact = -1 + 2 * Math.exp(-70 * 50 * 600 / (108 * 3600.0));
        assertThat(cell.emfVolts(25) - still.emfVolts(25)).isCloseTo(0.025 * (exact - quiet), within(1e-9));
    }

    /** Arrhenius factor of the model page at 5 °C: e^(3700·(1/278.15 − 1/298.15)) = 2.441. */
    @Test
    void a_cold_cell_has_more_resistance() {
        Cell cell = new Cell(CellParameters.lfp105(), 0.5, 25);
        double warm = cell.ohms();
        cell.settle(5);
        assertThat(cell.ohms() / warm).isCloseTo(2.441, within(0.001));
    }

    @Test
    void charge_is_the_integral_of_current_less_self_discharge() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.5});
        world.inflict(new Fault.Leak(0, 2));
        Rigs.advance(world, 3600);
        double own = 0.02 * 108 / 730.5;
        assertThat((0.5 - world.charge(0)) * 108).isCloseTo(2 + own, within(1e-9));
        assertThat(world.coulombs()).isZero();
    }

    @Test
    void the_account_of_charge_is_the_change_of_charge_in_the_cell() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.join(world, Line.SOURCE_RELAY);
        world.inflict(new Fault.Weld(Line.SINK_RELAY));
        world.source(0, true, 3.6, 30);
        Rigs.advance(world, 777.7);
        world.source(0, false, 0, 0);
        world.sink(0, true, 45);
        Rigs.advance(world, 333.3);
        assertThat((world.charge(0) - 0.5) * 100 * 3600).isCloseTo(world.coulombs(), within(1e-6));
        assertThat(world.coulombsIn()).isCloseTo(30 * 777.7, within(20.0));
        assertThat(world.coulombsOut()).isCloseTo(45 * 333.3, within(30.0));
    }

    @Test
    void constant_voltage_tapers_without_ever_rising_again() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.93});
        Rigs.join(world, Line.SOURCE_RELAY);
        world.source(0, true, 3.60, 52.5);
        Rigs.advance(world, 1);
        double before = world.amps();
        boolean tapering = false;
        while (world.amps() > 5.25) {
            Rigs.advance(world, 0.1);
            tapering = tapering || world.amps() < 52;
            assertThat(world.amps()).isLessThanOrEqualTo(before + 1e-9);
            assertThat(world.packVolts()).isLessThan(3.6000001);
            if (tapering) {
                assertThat(world.packVolts()).isCloseTo(3.6, within(1e-9));
            }
            before = world.amps();
        }
        assertThat(tapering).isTrue();
    }

    @Test
    void cells_in_series_share_the_current_and_show_bars_and_joints_between_them() {
        WorldParameters three = WorldParameters.inSeries(3).withCells(List.of(CellParameters.lfp105(),
                CellParameters.lfp105().withOhmsTimes(1.5), CellParameters.lfp105()));
        World world = new World(three, new double[] {0.5, 0.5, 0.5});
        Rigs.join(world, Line.SINK_RELAY);
        world.sink(0, true, 100);
        Rigs.advance(world, 60);
        double cells = world.cellVolts(0) + world.cellVolts(1) + world.cellVolts(2);
        double bars = 2 * (0.03e-3 + 2 * 0.05e-3);
        assertThat(world.packVolts() - cells).isCloseTo(world.amps() * bars, within(1e-9));
        assertThat(world.cellVolts(1)).isLessThan(world.cellVolts(0));

        double lowest = world.cellVolts(2);
        double pack = world.packVolts();
        world.inflict(new Fault.LooseJoint(2, false, 1e-3));
        assertThat(world.cellVolts(2)).isCloseTo(lowest, within(1e-6));
        assertThat(pack - world.packVolts()).isCloseTo(0.1, within(1e-4));
    }
}
