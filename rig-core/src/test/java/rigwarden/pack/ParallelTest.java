package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Equal cells side by side are one large cell: n times the current through a path of a third, all else alike. */
class ParallelTest {
    private static final int N = 3;

    @Test
    void three_cells_side_by_side_do_at_three_times_the_current_what_one_does() {
        CellParameters one = CellParameters.lfp105();
        World single = discharging(one, 1);
        World triple = discharging(one.inParallel(N), N);

        for (int i = 0; i < 60; i++) {
            Rigs.advance(single, 60);
            Rigs.advance(triple, 60);
            assertThat(triple.cellVolts(0)).isCloseTo(single.cellVolts(0), within(1e-9));
            assertThat(triple.charge(0)).isCloseTo(single.charge(0), within(1e-12));
            assertThat(triple.coulombs()).isCloseTo(N * single.coulombs(), within(1e-6));
            assertThat(triple.celsius(Node.body(0))).isCloseTo(single.celsius(Node.body(0)), within(1e-9));
            assertThat(triple.celsius(Node.stud(0, true))).isCloseTo(single.celsius(Node.stud(0, true)), within(1e-9));
        }
        assertThat(single.celsius(Node.body(0))).isGreaterThan(24);
    }

    @Test
    void its_true_values_are_three_times_the_charge_and_a_third_of_the_resistance() {
        CellParameters one = CellParameters.lfp105();

        assertThat(CellProof.ampHours(one.inParallel(N))).isCloseTo(N * CellProof.ampHours(one), within(1e-6));
        assertThat(CellProof.ohms10s(one.inParallel(N))).isCloseTo(CellProof.ohms10s(one) / N, within(1e-12));
        assertThatThrownBy(() -> one.inParallel(0)).isInstanceOf(IllegalArgumentException.class);
    }

    private static World discharging(CellParameters cell, int size) {
        double n = size;
        WarmthParameters warmth = new WarmthParameters(0.6 * n, 4 * n, 40 * n, 0.8 * n, 1.5 * n, 30 * n, 0.06 * n,
                0.3 * n, 60 * n, 0.5 * n, 150 * n, 0.8 * n);
        PathParameters path = new PathParameters(0.05e-3 / n, 0.03e-3 / n, 0.2e-3 / n, 0.25e-3 / n, 0.3e-3 / n,
                4.7 / n, 10e-3 * n, 220 / n, 1e-3 / n, 1e-3 / n, 2000 * n, 0, List.of(new Supply.Programmable()),
                List.of(new Load.Electronic(0.1)));
        World world = new World(WorldParameters.oneCell().withCells(List.of(cell)).withPath(path).withWarmth(warmth),
                new double[] {0.9});
        Rigs.join(world, Line.sink(0));
        world.sink(0, true, 50 * n);
        return world;
    }
}
