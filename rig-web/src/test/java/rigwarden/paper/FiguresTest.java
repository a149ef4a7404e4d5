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
    void the_largest_term_comes_with_a_cure_and_what_would_be_left() {
        Budget budget = new Budget(List.of(Budget.limits(Nature.GAIN, "shunt tolerance", 0.2656), Budget.standard("clock ratio", 0.02)));

        assertThat(Shrinking.of(budget, "Ah")).isEqualTo("calibrate the shunt: ± 0.26 → ± 0.040 Ah at best");
        assertThat(Shrinking.of(new Budget(List.of(Budget.limits(Nature.OFFSET, "amplifier offset", 0.02))), "Ah"))
                .startsWith("let it rest before and after, so that the current's zero is read with the contactor open");
    }
}
