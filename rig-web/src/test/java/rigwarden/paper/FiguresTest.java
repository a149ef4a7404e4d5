package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Budget;
import rigwarden.findings.Nature;

/** Values as a person reads them, and what to do about the largest term. */
class FiguresTest {
    @Test
    void an_uncertainty_has_two_digits_and_the_value_ends_where_it_does() {
        assertThat(Figures.both(106.26632, 0.26829, "Ah")).isEqualTo("106.27 ± 0.27 Ah");
        assertThat(Figures.both(-0.0087, 0.0012, "Ah")).isEqualTo("−0.0087 ± 0.0012 Ah");
        assertThat(Figures.both(33.3, 12, "K")).isEqualTo("33 ± 12 K");
        assertThat(Figures.both(1.2, 0.05, "")).isEqualTo("1.200 ± 0.050");
    }

    @Test
    void the_largest_term_comes_with_a_cure_and_what_would_be_left_by_it() {
        Budget budget = new Budget(List.of(Budget.limits("shunt tolerance", 0.2656), Budget.standard("clock ratio", 0.02)));

        // limits ± 0.1 % of 106.24 Ah instead of ± 0.25 %, beside the clock: u = 0.0645 Ah
        assertThat(Shrinking.of(106.24, budget, "Ah")).isEqualTo("calibrate the shunt: ± 0.26 → ± 0.11 Ah at best");
    }

    @Test
    void a_cure_that_leaves_no_less_is_not_praised_and_of_a_term_that_nobody_knows_nothing_is_foretold() {
        Budget good = new Budget(List.of(Budget.limits("shunt tolerance", 0.05), Budget.standard("clock ratio", 0.02)));
        Budget odd = new Budget(List.of(Budget.limits("knees alike", 0.4)));

        assertThat(Shrinking.of(106, good, "Ah")).isEqualTo("calibrate the shunt: of ± 0.067 Ah hardly less would be left");
        assertThat(Shrinking.of(2, odd, "Ah")).isEqualTo("no cure is known here");
    }

    @Test
    void a_zero_that_was_read_at_rest_is_not_cured_by_a_rest_and_a_term_of_one_of_two_tests_has_the_cure_of_its_kind() {
        Budget zeroed = new Budget(List.of(Budget.limits("thermo-electric voltage", 0.4), Budget.standard("current's zero at rest", 0.01)));
        Budget ratio = new Budget(List.of(Budget.standard("tap at the cut-off, fast test", 0.1), Budget.standard("tap at the cut-off, slow test", 0.05)));
        Budget energy = new Budget(List.of(Budget.standard("charge", 0.4), Budget.standard("voltage taps", 0.1)));

        assertThat(Shrinking.of(106, zeroed, "Ah")).startsWith("keep both ends of the shunt equally warm: ± 0.38 → ");
        // 20 % of both taps' terms is left
        assertThat(Shrinking.of(1, ratio, "")).isEqualTo("calibrate the voltage taps: ± 0.22 → ± 0.045 at best");
        assertThat(Shrinking.of(340, energy, "Wh")).isEqualTo("what makes the charge of the same step surer makes this surer");
    }

    @Test
    void a_term_that_knows_what_would_be_left_of_it_is_believed() {
        Budget.Term temperature = new Budget.Term("temperature coefficient", 1, Double.POSITIVE_INFINITY, false, Nature.OWN, 1, 0.25);

        assertThat(Shrinking.of(106, new Budget(List.of(temperature)), "Ah")).isEqualTo("test at the rating's temperature: ± 2.0 → ± 0.50 Ah at best");
    }
}
