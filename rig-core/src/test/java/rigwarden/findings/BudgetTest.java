package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** Uncertainty against JCGM 100:2008. */
class BudgetTest {
    @ParameterizedTest
    @Mark(of = "budget", standing = Standing.PUBLISHED, source = "JCGM 100:2008, Table G.2, column 95.45 %")
    @CsvSource({"1,13.97", "2,4.53", "3,3.31", "4,2.87", "5,2.65", "10,2.28", "20,2.13", "50,2.05", "100,2.03"})
    void coverage_factors_agree_with_the_guide_to_its_last_digit(double freedom, double printed) {
        assertThat(Budget.factor(freedom)).isCloseTo(printed, within(0.005));
    }

    @Test
    void without_degrees_of_freedom_the_factor_is_the_normal_two() {
        assertThat(Budget.factor(Double.POSITIVE_INFINITY)).isCloseTo(2.000, within(0.0005));
    }

    @Test
    @Mark(of = "budget", standing = Standing.PUBLISHED, source = "JCGM 100:2008, H.1: 25, 9.7, 2.9, 16.6 nm with 18, 25.6, 50, 2 degrees give 32 nm and 16")
    void the_end_gauge_of_the_guide_has_its_combined_uncertainty_and_freedom() {
        Budget budget = new Budget(List.of(
                new Budget.Term("standard", 25, 18),
                new Budget.Term("difference", 9.7, 25.6),
                new Budget.Term("expansion", 2.9, 50),
                new Budget.Term("temperature", 16.6, 2)));

        assertThat(budget.combined()).isCloseTo(32, within(0.5));
        assertThat(Math.floor(budget.freedom())).isEqualTo(16);
        assertThat(budget.largest().name()).isEqualTo("standard");
    }

    @Test
    @Mark(of = "budget", standing = Standing.PUBLISHED, source = "JCGM 100:2008, 4.3.7: rectangular, a/√3")
    void limits_of_a_tolerance_become_a_standard_uncertainty() {
        assertThat(Budget.limits("tolerance", 0.25).standard()).isCloseTo(0.144338, within(1e-6));
    }

    private static Budget.Term rectangular(double standard) {
        return Budget.limits("rectangular", standard * Math.sqrt(3));
    }

    private static Budget.Term normal(double standard) {
        return Budget.standard("normal", standard);
    }

    @Test
    @Mark(of = "budget", standing = Standing.FROM_MEMORY, source = "JCGM 101:2008, 9.2.2 to 9.2.4: 95 % within ± 3.92, ± 3.88, ± 17.0")
    void sums_of_normal_and_rectangular_terms_have_the_intervals_of_the_supplement() {
        assertThat(Convolution.halfWidth(List.of(normal(1), normal(1), normal(1), normal(1)), 0.95))
                .isCloseTo(3.92, within(0.005));
        assertThat(Convolution.halfWidth(
                List.of(rectangular(1), rectangular(1), rectangular(1), rectangular(1)), 0.95))
                .isCloseTo(3.88, within(0.005));
        assertThat(Convolution.halfWidth(
                List.of(rectangular(1), rectangular(1), rectangular(1), rectangular(10)), 0.95))
                .isCloseTo(17.0, within(0.05));
    }

    @Test
    void one_rectangular_term_alone_is_covered_by_its_share_of_the_limits() {
        Budget budget = new Budget(List.of(Budget.limits("tolerance", 1)));

        assertThat(budget.expanded()).isCloseTo(Budget.COVERAGE, within(0.001));
    }
}
