package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class EnergyBalanceTest {
    private static final double NO_BLEED = 1e15;

    /** Closed form: what goes in at the studs is the charge at the constant electromotive force plus I²Rt. */
    @Test
    void a_plain_cell_turns_all_that_it_does_not_store_into_heat() {
        World world = sealed(CellParameters.plain(100, 3.3, 0.5e-3), 0.3);
        Rigs.join(world, Line.SOURCE_RELAY);
        world.source(0, true, 4, 50);
        Rigs.advance(world, 600);

        double charge = world.coulombs();
        double heat = 50.0 * 50 * 0.5e-3 * (charge / 50);
        assertThat(charge).isCloseTo(50 * 600, within(2.0));
        assertThat(world.joules()).isCloseTo(3.3 * charge + heat, within(1e-6 * world.joules()));
    }

    /** First law over all nodes: stored enthalpy + warmth = energy at the bus, less fuse and leads outside. */
    @Test
    void heat_in_all_nodes_and_stored_energy_add_up_to_the_energy_that_went_in() {
        CellParameters cell = CellParameters.plain(100, 3.3, 0.5e-3);
        World world = sealed(cell, 0.3);
        Rigs.join(world, Line.SOURCE_RELAY);
        world.source(0, true, 4, 50);
        Rigs.advance(world, 3600);

        double squareAmpSeconds = (world.joules() - 3.3 * world.coulombs()) / 0.5e-3;
        double fuse = 0.2e-3 * squareAmpSeconds;
        double warmth = warmth(world, cell.joulesPerKelvin());
        double stored = 3.3 * (world.charge(0) - 0.3) * 100 * 3600;
        assertThat(stored + warmth + fuse).isCloseTo(world.busJoules(), within(1e-6 * world.busJoules()));
    }

    /** The whole cell: stored enthalpy is the integral of U − T·dU/dT over charge, done here by fine trapezoids. */
    @Test
    void the_real_cell_balances_too_with_hysteresis_relaxation_and_entropy() {
        CellParameters cell = CellParameters.lfp105();
        World world = sealed(cell, 0.2);
        Rigs.join(world, Line.SINK_RELAY);
        world.sink(0, true, 40);
        Rigs.advance(world, 1200);

        double end = world.charge(0);
        double enthalpy = 0;
        int parts = 200_000;
        for (int i = 0; i < parts; i++) {
            double s = 0.2 + (end - 0.2) * (i + 0.5) / parts;
            double slope = cell.openCircuit().voltsPerKelvin(s);
            enthalpy += (cell.openCircuit().volts(s) - 298.15 * slope) * (end - 0.2) / parts * 108 * 3600;
        }
        double squareAmpSeconds = 40 * -world.coulombs();
        double outside = 0.2e-3 * squareAmpSeconds;
        assertThat(enthalpy + warmth(world, 2100) + outside)
                .isCloseTo(world.busJoules(), within(2e-5 * -world.busJoules()));
    }

    private static World sealed(CellParameters cell, double charge) {
        WorldParameters p = WorldParameters.oneCell().withCells(List.of(cell)).withWarmth(WarmthParameters.sealed())
                .withPath(PathParameters.bench().withBus(4.7, 1e-12, NO_BLEED));
        return new World(p, new double[] {charge});
    }

    private static double warmth(World world, double bodyJoulesPerKelvin) {
        double joules = bodyJoulesPerKelvin * (world.celsius(Node.body(0)) - 22);
        joules += 40 * (world.celsius(Node.stud(0, true)) + world.celsius(Node.stud(0, false)) - 44);
        joules += 30 * (world.celsius(Node.link(0)) + world.celsius(Node.link(1)) - 44);
        return joules + 60 * (world.celsius(Node.SHUNT) - 22) + 150 * (world.celsius(Node.CONTACTOR) - 22);
    }
}
