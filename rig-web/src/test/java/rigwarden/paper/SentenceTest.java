package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Answer;
import rigwarden.findings.Budget;
import rigwarden.findings.Capacity;
import rigwarden.findings.Headline;
import rigwarden.findings.Rating;
import rigwarden.findings.Verdict;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.RatedAt;

/** The first line that a person reads of a discharge. */
class SentenceTest {
    private static Capacity capacity(double celsius, Capacity.Start start, boolean lowerBound) {
        Budget budget = new Budget(List.of(Budget.standard("shunt tolerance", 0.7)));
        Budget energy = new Budget(List.of(Budget.standard("shunt tolerance", 18)));
        return new Capacity(3, 0.5, new Uncertain(103.1, 1.4), new Uncertain(2_640, 36), budget, energy, celsius, 0, 2.5, 0.005, start, 0, 0,
                lowerBound, false);
    }

    private static String said(Capacity capacity, Answer limiting, Rating rating, int series) {
        return Sentence.of(new Headline(capacity, "", limiting, Verdict.of(capacity, rating), rating, series));
    }

    private static final Capacity SOUND = capacity(25, Capacity.Start.FULL, false);
    private static final Rating RATING = Rating.usual(105);

    @Test
    void who_how_much_where_and_whether_that_was_promised_are_one_sentence() {
        assertThat(said(SOUND, new Answer.Named("cell 5", "2.500 V at the end"), RATING, 8)).isEqualTo(
                "Cell 5 limits the pack: 103.1 Ah ± 1.4 Ah at 0.50 C, 25.0 °C, started full; rated 105 Ah at these conditions: not met, 99.7 % sure");
    }

    @Test
    void what_is_met_by_colder_cells_is_not_said_to_be_at_the_ratings_conditions() {
        Capacity cold = capacity(14, Capacity.Start.FULL, false);

        assertThat(said(cold, new Answer.Named("cell 1", ""), Rating.usual(95), 1)).contains("rated 95 Ah, though not at its conditions: met, more than 99.9 % sure");
    }

    @Test
    void what_is_met_before_the_ratings_cut_off_is_not_said_to_be_at_its_conditions_either() {
        Capacity early = new Capacity(3, 0.5, SOUND.ampHours(), SOUND.wattHours(), SOUND.budget(), SOUND.energyBudget(), 25, 0, 2.8, 0.005,
                Capacity.Start.FULL, 0, 0, true, false);

        assertThat(said(early, new Answer.Refused(""), Rating.usual(95), 1)).contains("rated 95 Ah, though not at its conditions: met, more than 99.9 % sure");
    }

    @Test
    void what_may_be_missing_from_full_stands_beside_what_came_out() {
        Capacity notFull = new Capacity(3, 0.5, SOUND.ampHours(), SOUND.wattHours(), SOUND.budget(), SOUND.energyBudget(), 25, 0, 2.5, 0.005,
                Capacity.Start.NOT_FULL, 0, 1.05, false, false);

        assertThat(said(notFull, new Answer.Named("cell 5", ""), RATING, 8)).contains(
                "103.1 Ah ± 1.4 Ah at 0.50 C, 25.0 °C, started not quite full (up to 1.05 Ah more); ");
    }

    @Test
    void what_cannot_be_said_is_said_in_its_place() {
        assertThat(said(SOUND, new Answer.CannotTell("cell 1 or cell 2", ""), RATING, 8))
                .startsWith("Cell 1 or cell 2 limits the pack, the run cannot tell which: 103.1 Ah");
        assertThat(said(capacity(Double.NaN, Capacity.Start.UNKNOWN, true), new Answer.Refused("ended by sink"), RATING, 8)).isEqualTo(
                "Which cell limits the pack is not known: at least 103.1 Ah ± 1.4 Ah at 0.50 C, at a temperature that nobody knows, how full it started"
                        + " is not known; rated 105 Ah: not decided at rated conditions: the capacity is a lower bound only");
        assertThat(Sentence.of(new Headline(SOUND, "there is one scan only: a charge needs two", new Answer.Refused(""), new Answer.Refused(""),
                RATING, 1))).isEqualTo("Step 3 gave no capacity: there is one scan only: a charge needs two");
    }

    @Test
    void of_one_cell_nothing_limits_it_and_a_promise_in_energy_is_answered_in_energy() {
        Rating energy = new Rating(2_700, "Wh", new RatedAt(25, 5, 0.05, 0.55, 2.5, OptionalDouble.of(2_700), true), 0.008);

        assertThat(said(SOUND, new Answer.Named("cell 1", ""), energy, 1)).isEqualTo(
                "The cell gives 2640 Wh ± 36 Wh at 0.50 C, 25.0 °C, started full; rated 2700 Wh at these conditions: not met, more than 99.9 % sure");
    }
}
