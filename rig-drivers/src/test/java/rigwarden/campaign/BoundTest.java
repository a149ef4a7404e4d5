package rigwarden.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Marks: with none seen the bound is 1 − 0.05^(1/N) by definition; with one of ten it is 0.39416, the root of the binomial sum. */
class BoundTest {
    @Test
    void with_none_seen_it_is_close_to_three_over_the_number_of_cases() {
        assertThat(Bound.upper(0, 300)).isCloseTo(1 - Math.pow(0.05, 1.0 / 300), within(1e-9)).isCloseTo(3.0 / 300, within(1e-4));
    }

    @Test
    void at_the_bound_so_few_or_fewer_come_in_one_campaign_of_twenty() {
        double p = Bound.upper(1, 10);

        double few = Math.pow(1 - p, 10) + 10 * p * Math.pow(1 - p, 9);

        assertThat(p).isCloseTo(0.39416, within(1e-4));
        assertThat(few).isCloseTo(0.05, within(1e-6));
    }

    @Test
    void where_every_case_was_unsafe_nothing_is_said() {
        assertThat(Bound.upper(7, 7)).isOne();
    }
}
