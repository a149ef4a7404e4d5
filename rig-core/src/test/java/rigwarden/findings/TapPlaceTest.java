package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** A tap that sits on the bar gives to one cell what it takes from its neighbour. */
class TapPlaceTest {
    private static List<Resistance> cells(double... milliohms) {
        List<Resistance> all = new ArrayList<>();
        for (double each : milliohms) {
            Budget budget = new Budget(List.of(Budget.standard("noise", 3e-6)));
            all.add(new Resistance(all.size() + 1, "by hand", 0.1, each / 1000, new double[] {-60, 0}, budget, 1));
        }
        return all;
    }

    @Test
    @Mark(of = "joint", standing = Standing.WORKED, source = "0.38 mΩ each; 0.10 mΩ of a bar with cell 3 instead of cell 4")
    void one_neighbour_more_and_the_other_as_much_less_is_a_tap_up_the_bar() {
        assertThat(TapPlace.of(cells(0.38, 0.39, 0.48, 0.28, 0.37, 0.38, 0.38))).hasValueSatisfying(said -> assertThat(said)
                .startsWith("cells 3 and 4 read 0.100 mΩ more and less than their likes").contains("on the bar instead of the stud"));
        assertThat(TapPlace.of(cells(0.38, 0.39, 0.28, 0.48, 0.37, 0.38, 0.38))).hasValueSatisfying(said -> assertThat(said)
                .startsWith("cells 4 and 3 read"));
    }

    @Test
    void a_bad_joint_a_bad_cell_and_the_spread_of_sound_cells_are_none() {
        assertThat(TapPlace.of(cells(0.38, 0.39, 0.58, 0.38, 0.37, 0.38, 0.38))).isEmpty();
        assertThat(TapPlace.of(cells(0.38, 0.39, 0.41, 0.35, 0.37, 0.38, 0.38))).isEmpty();
        assertThat(TapPlace.of(cells(0.48, 0.28, 0.38))).as("three are no family").isEmpty();
    }
}
