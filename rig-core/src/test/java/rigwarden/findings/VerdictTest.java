package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.RatedAt;

/** A capacity held against a rating: of 105 Ah at the usual conditions, unless a test says another. */
class VerdictTest {
    private static final Rating RATING = Rating.usual(105);
    private static final Test105 SOUND = new Test105(0.5, 106, 0.3, 25, 0, 2.5, Capacity.Start.FULL, 0, false, false);

    /** A discharge by its numbers, with a tap that is good to 5 mV at the end. */
    private record Test105(double rateC, double ampHours, double expanded, double celsius, double probesKelvin, double endVolts,
            Capacity.Start start, double missing, boolean lowerBound, boolean interrupted) {
        Test105 gave(double other, double plusMinus) {
            return new Test105(rateC, other, plusMinus, celsius, probesKelvin, endVolts, start, missing, lowerBound, interrupted);
        }

        Test105 at(double other, double probes) {
            return new Test105(rateC, ampHours, expanded, other, probes, endVolts, start, missing, lowerBound, interrupted);
        }

        Test105 endedAt(double volts) {
            return new Test105(rateC, ampHours, expanded, celsius, probesKelvin, volts, start, missing, lowerBound, interrupted);
        }

        Test105 rate(double other) {
            return new Test105(other, ampHours, expanded, celsius, probesKelvin, endVolts, start, missing, lowerBound, interrupted);
        }

        Test105 bound(boolean lower, boolean broken) {
            return new Test105(rateC, ampHours, expanded, celsius, probesKelvin, endVolts, start, missing, lower, broken);
        }

        Answer against(Rating rating) {
            Budget budget = new Budget(List.of(Budget.standard("shunt tolerance", expanded / 2)));
            Budget energy = new Budget(List.of(Budget.standard("shunt tolerance", 3.2 * expanded / 2)));
            return Verdict.of(new Capacity(3, rateC, new Uncertain(ampHours, expanded), new Uncertain(3.2 * ampHours, 3.2 * expanded), budget,
                    energy, celsius, probesKelvin, endVolts, 0.005, start, 0, missing, lowerBound, interrupted), rating);
        }

        String word(Rating rating) {
            return switch (against(rating)) {
                case Answer.Decided d -> d.met() ? "met" : "not met";
                case Answer.NotDecided _ -> "not decided";
                case Answer other -> other.toString();
            };
        }
    }

    @Test
    @Mark(of = "verdict", standing = Standing.WORKED, source = "normal distribution by hand: (105 − 103.1)/0.7 = 2.714, 99.67 %")
    void a_capacity_below_its_rating_by_more_than_its_uncertainty_is_not_met_with_its_probability() {
        Answer answer = SOUND.gave(103.1, 1.4).against(RATING);

        assertThat(answer).isInstanceOfSatisfying(Answer.Decided.class, d -> {
            assertThat(d.met()).isFalse();
            assertThat(d.probability()).isCloseTo(0.9967, within(0.00005));
            assertThat(d.against()).isEqualTo("rated 105 Ah at 25 ± 5 °C, 0.05…0.55 C, to 2.50 V, counted in Ah; the usual conditions, none being stated");
            assertThat(d.at().value()).isCloseTo(103.1, within(1e-9));
            assertThat(d.at().budget().expanded()).isCloseTo(1.4, within(0.001));
        });
    }

    @ParameterizedTest
    @Mark(of = "verdict", standing = Standing.WORKED, source = "± U covers 95.45 %: at an edge of it 97.725 % lie on one side")
    @CsvSource({"104.5,1.4,not decided", "106.39,1.4,not decided", "106.41,1.4,met", "103.61,1.4,not decided", "103.59,1.4,not met"})
    void it_is_decided_just_where_the_whole_uncertainty_lies_on_one_side_and_there_it_is_97_7_percent_sure(double ampHours, double expanded,
            String word) {
        Answer answer = SOUND.gave(ampHours, expanded).against(RATING);

        assertThat(SOUND.gave(ampHours, expanded).word(RATING)).isEqualTo(word);
        if (answer instanceof Answer.Decided decided) {
            assertThat(decided.probability()).isBetween(0.97725, 0.979);
        }
    }

    @Test
    void an_interrupted_capacity_decides_neither_way_however_far_it_lies_from_the_rating() {
        assertThat(SOUND.gave(115, 0.3).bound(false, true).word(RATING)).isEqualTo("not decided");
        assertThat(SOUND.gave(90, 0.3).bound(false, true).word(RATING)).isEqualTo("not decided");
        assertThat(SOUND.gave(115, 0.3).bound(true, false).word(RATING)).as("at least so much is one-sided, and enough").isEqualTo("met");
    }

    @Test
    void of_a_lower_bound_and_of_cells_of_an_unknown_warmth_no_probability_is_told_and_the_number_is_as_it_was_measured() {
        for (Test105 odd : List.of(SOUND.gave(50, 0.3).bound(true, false), SOUND.at(Double.NaN, 0), SOUND.gave(50, 0.3).at(20, 1).bound(true, false))) {
            assertThat(odd.against(RATING)).isInstanceOfSatisfying(Answer.NotDecided.class, not -> {
                assertThat(not.probability()).isEmpty();
                assertThat(not.at().value()).isEqualTo(odd.ampHours());
            });
        }
        assertThat(SOUND.gave(104, 0.3).at(15, 0.2).against(RATING)).isInstanceOfSatisfying(Answer.NotDecided.class, not -> assertThat(not.probability()).isPresent());
    }

    @Test
    @Mark(of = "verdict", standing = Standing.FROM_MEMORY, source = "JCGM 106:2012, 7.4, a Zener diode of −5.47 V, u = 0.05 V, against −5.40 V: Φ(1.4);"
            + " the number is worked")
    void a_probability_of_conformity_is_that_of_the_guides_example() {
        Budget diode = new Budget(List.of(Budget.standard("voltmeter", 0.05)));

        assertThat(diode.below(-5.40 - -5.47)).isCloseTo(0.91924, within(0.00005));
    }

    @Test
    @Mark(of = "verdict", standing = Standing.WORKED, source = "limits ± 1: 75 % below 0.5; Student's t with 2 degrees of freedom: 1.886 at 90 %")
    void the_probability_is_of_the_same_distribution_as_the_uncertainty() {
        Budget limits = new Budget(List.of(Budget.limits("tolerance", 1)));
        Budget few = new Budget(List.of(new Budget.Term("readings", 1, 2)));

        assertThat(limits.below(0.5)).isCloseTo(0.75, within(0.001));
        assertThat(limits.below(-1.1)).isZero();
        assertThat(few.below(1.8856)).isCloseTo(0.90, within(0.0001));
        for (Budget budget : List.of(limits, few)) {
            assertThat(budget.below(budget.expanded())).isCloseTo((1 + Budget.COVERAGE) / 2, within(0.0005));
        }
    }

    @ParameterizedTest
    @Mark(of = "verdict", standing = Standing.WORKED, source = "0.8 %/K of 103.8 Ah and probes of ± 1.8 K: ± 1.49 Ah at 25.0 °C; of ± 0.2 K: ± 0.17 Ah")
    @CsvSource({"25,1.8,not decided", "25,0.2,not met", "20.1,0.2,not decided", "22,0.2,not decided", "28.3,1.8,not decided", "28,1.8,not met"})
    void what_the_cells_probes_may_be_wrong_by_enters_on_both_sides(double celsius, double probes, String word) {
        assertThat(SOUND.gave(103.8, 0.3).at(celsius, probes).word(RATING)).isEqualTo(word);
    }

    @Test
    void the_term_of_the_temperature_is_named_and_says_what_a_test_at_the_ratings_temperature_would_leave() {
        Answer.NotDecided cold = (Answer.NotDecided) SOUND.gave(104.5, 0.3).at(21.5, 1).against(RATING);

        // 0…0.8 %/K of 2.5…4.5 K, since nobody knows the coefficient: 0 to 3.6 %; at 25 °C ± 0.8 %
        Budget.Term term = cold.at().budget().largest();
        assertThat(term.name()).isEqualTo("temperature coefficient");
        assertThat(term.halfWidth()).isCloseTo(104.5 * 0.018, within(1e-9));
        assertThat(term.left()).isCloseTo(104.5 * 0.008 / Math.sqrt(3), within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"3.2,not decided", "2.511,not decided", "2.505,not met", "2.4951,not met", "2.489,not decided", "Infinity,not decided"})
    void a_discharge_that_ended_elsewhere_than_at_the_ratings_cut_off_decides_no_shortfall(double endVolts, String word) {
        assertThat(SOUND.gave(95, 0.3).endedAt(endVolts).word(RATING)).isEqualTo(word);
    }

    @Test
    void more_than_the_rating_at_a_higher_cut_off_is_more_and_below_the_ratings_cut_off_nothing_is_met() {
        Rating higher = new Rating(105, "Ah", new RatedAt(25, 5, 0.05, 0.55, 2.8, OptionalDouble.empty(), true), 0.008);

        assertThat(SOUND.endedAt(3.0).word(RATING)).isEqualTo("met");
        assertThat(SOUND.endedAt(2.5).word(higher)).isEqualTo("not decided");
        assertThat(SOUND.endedAt(2.8).word(higher)).isEqualTo("met");
    }

    @Test
    void outside_the_ratings_conditions_a_shortfall_is_never_held_against_the_cells() {
        Test105 poor = SOUND.gave(98, 0.3);

        for (Test105 odd : List.of(poor.at(15, 0.2), poor.at(Double.NaN, 0.2), poor.rate(0.8), poor.rate(0.01), poor.bound(true, false),
                poor.bound(false, true))) {
            assertThat(odd.word(RATING)).as("%s", odd).isEqualTo("not decided");
        }
        assertThat(SOUND.at(15, 0.2).word(RATING)).as("cold only costs capacity: more than the rating is more").isEqualTo("met");
    }

    @Test
    void a_rating_in_energy_is_held_against_the_energy() {
        Rating energy = new Rating(340, "Wh", new RatedAt(25, 5, 0.05, 0.55, 2.5, OptionalDouble.of(340), true), 0.008);

        assertThat(SOUND.gave(107, 0.3).word(energy)).as("342.4 Wh").isEqualTo("met");
        assertThat(SOUND.gave(105, 0.3).word(energy)).as("336.0 Wh").isEqualTo("not met");
        assertThat(((Answer.Decided) SOUND.gave(105, 0.3).against(energy)).against())
                .isEqualTo("rated 340 Wh at 25 ± 5 °C, 0.05…0.55 C, to 2.50 V, counted in Wh");
    }

    @Test
    void nothing_that_came_out_decides_nothing_and_is_no_error() {
        Rating energy = new Rating(340, "Wh", new RatedAt(25, 5, 0.05, 0.55, 2.5, OptionalDouble.of(340), true), 0.008);
        Test105 nothing = new Test105(0, 0, 0.1, 25, 0.2, 3.3, Capacity.Start.NOT_FULL, 1.05, false, false);

        assertThat(nothing.word(energy)).isEqualTo("not decided");
        assertThat(nothing.word(RATING)).isEqualTo("not decided");
    }
}
