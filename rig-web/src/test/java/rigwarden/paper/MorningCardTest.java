package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Answer;
import rigwarden.findings.Budget;
import rigwarden.findings.Capacity;
import rigwarden.findings.Nature;
import rigwarden.findings.Rating;
import rigwarden.findings.StepFinding;
import rigwarden.findings.Verdict;
import rigwarden.logbook.Outcome;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.warden.Rules;
import rigwarden.warden.Trip;

/** What a person is told of a run that is over. The reference rig's cell is rated 105 Ah. */
class MorningCardTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");

    private Rig rig;
    private Program program;

    @BeforeEach
    void theReferenceRig() {
        Read.Sound<Rig> read = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
        rig = read.value();
        program = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), read)).value();
    }

    private static StepFinding step(int index, String kind, double ampHours, double celsius, Ended by, boolean settled) {
        Budget budget = new Budget(List.of(Budget.limits(Nature.GAIN, "shunt tolerance", 0.2)));
        return new StepFinding(index, kind, 36_000, new Uncertain(ampHours, budget.expanded()), budget, ampHours,
                new Uncertain(3.2 * ampHours, 1), new StepFinding.Extreme(2.5, "cell_01_v"), new StepFinding.Extreme(3.6, "cell_01_v"),
                new StepFinding.Extreme(27, "cell_01_c"), celsius, ampHours / 10, -0.01, by, settled);
    }

    private static EndedSteps.Told told(List<StepFinding> steps) {
        return new EndedSteps.Told(steps, Map.of());
    }

    private List<StepFinding> night(double given, Ended charge, double celsius, Ended discharge) {
        return List.of(step(1, "charge", 50, 25, charge, false), step(2, "rest", 0, 25, Ended.SETTLED, true),
                step(3, "discharge", -given, celsius, discharge, false));
    }

    private Card card(Outcome outcome, List<StepFinding> steps, boolean recharge) {
        return MorningCard.of(12, rig, program, new MorningCard.Known(outcome, "its words", false, told(steps), Optional.empty(),
                recharge ? "at about 0 %, nearly empty: recharge within 24 h" : "at about 40 %, good for storing", recharge));
    }

    private static String part(Card card, String heading) {
        return card.parts().stream().filter(p -> p.heading().equals(heading)).map(p -> String.join(" ", p.lines()))
                .findFirst().orElseThrow();
    }

    @Test
    void a_night_that_went_well_has_its_number_with_rate_temperature_and_uncertainty() {
        Card card = card(Outcome.FINISHED, night(106, Ended.TAPER, 25, Ended.CUT_OFF), false);

        assertThat(part(card, "The number")).matches("106\\.00 Ah ± 0\\.\\d\\d Ah, 339\\.2 Wh ± 1\\.1 Wh, at 0\\.10 C and 25\\.0 °C, started full"
                + " \\(95\\.45 %\\)");
        assertThat(part(card, "What to do now")).isEqualTo("The cells are left at about 40 %, good for storing.");
        assertThat(part(card, "What not to conclude")).doesNotContain("lower bound", "do not hold it", "attended");
        assertThat(card.parts()).noneMatch(p -> p.weight() == Card.Weight.URGENT);
    }

    @Test
    void what_started_at_an_unknown_charge_is_at_least_so_much_and_never_too_little() {
        Card card = card(Outcome.FINISHED, night(60, Ended.TIME, 25, Ended.CUT_OFF), false);

        assertThat(part(card, "The number")).startsWith("at least 60.00 Ah");
        assertThat(part(card, "What not to conclude")).contains("is a lower bound: never that the cells have less");
    }

    @Test
    void a_number_that_decides_nothing_about_the_rating_says_why_by_the_verdicts_own_limits() {
        assertThat(part(card(Outcome.FINISHED, night(100, Ended.TAPER, 15, Ended.CUT_OFF), false), "What not to conclude"))
                .contains("The number at 0.10 C decides neither for nor against what was rated 105 Ah: not decided at rated conditions: the cells were at 15.0 °C,",
                        "the rating holds at 25 ± 5 °C");
        assertThat(part(card(Outcome.FINISHED, night(105.05, Ended.TAPER, 25, Ended.CUT_OFF), false), "What not to conclude"))
                .contains("decides neither for nor against", "not decided by this measurement");
    }

    @Test
    void between_two_and_five_kelvin_from_the_rating_the_card_does_not_warn_where_the_verdict_decides() {
        List<StepFinding> warm = night(98, Ended.TAPER, 27.5, Ended.CUT_OFF);

        assertThat(Verdict.of(Capacity.of(rig, warm).getFirst(), Rating.of(rig.cells()))).isInstanceOf(Answer.Decided.class);
        assertThat(part(card(Outcome.FINISHED, warm, false), "What not to conclude")).doesNotContain("27.5 °C", "neither for nor against");
    }

    @Test
    void a_charge_that_cannot_be_told_gives_no_number_here_either() {
        Card card = MorningCard.of(12, rig, program, new MorningCard.Known(Outcome.FINISHED, "", false, new EndedSteps.Told(
                night(106, Ended.TAPER, 25, Ended.CUT_OFF), Map.of(3, "the accumulator could not be followed")), Optional.empty(), "at about 40 %", false));

        assertThat(part(card, "The number")).isEqualTo("None of step 3: the accumulator could not be followed.");
        assertThat(part(card, "What not to conclude")).doesNotContain("The number at");
    }

    @Test
    void an_interrupted_run_never_decides() {
        Card card = card(Outcome.INTERRUPTED, night(100, Ended.TAPER, 25, Ended.CUT_OFF), false);

        assertThat(part(card, "What ended it")).contains("The process that ran it died. its words");
        assertThat(part(card, "What not to conclude")).contains("decides neither for nor against a rating");
        assertThat(part(card, "What to do now")).contains("Look whether the contactor is open");
    }

    @Test
    void a_rest_that_still_runs_or_was_broken_off_has_not_ended_too_soon_for_what_came_after_it() {
        List<StepFinding> resting = List.of(step(1, "charge", 50, 25, Ended.TAPER, false), step(2, "rest", 0, 25, Ended.CUT, false));
        List<StepFinding> tooSoon = List.of(step(1, "charge", 50, 25, Ended.TAPER, false), step(2, "rest", 0, 25, Ended.TIME, false));

        assertThat(part(card(Outcome.RUNNING, resting, false), "What ended it")).contains("It is in step 2 of");
        assertThat(part(card(Outcome.RUNNING, resting, false), "What not to conclude")).doesNotContain("A rest ended");
        assertThat(part(card(Outcome.RUNNING, tooSoon, false), "What not to conclude")).contains("A rest ended before the cells had settled");
    }

    @Test
    void cells_that_are_nearly_empty_are_what_to_do_first() {
        Card card = card(Outcome.STOPPED, night(100, Ended.TAPER, 25, Ended.STOPPED), true);

        assertThat(part(card, "What to do now")).contains("RECHARGE: the cells are left at about 0 %, nearly empty: recharge within 24 h.");
        assertThat(part(card, "The number")).startsWith("at least 100.00 Ah");
        assertThat(card.lines()).contains("! What to do now");
    }

    @Test
    void a_trip_is_told_with_its_rule_and_is_not_to_be_cleared_before_its_cause_is_found() {
        Trip trip = new Trip(Rules.of(rig).getFirst(), rig.channels(Role.CELL_VOLTS).getFirst(), 3.712, 3.70, 5, 77);
        Card card = MorningCard.of(12, rig, program, new MorningCard.Known(Outcome.TRIPPED, "rule 1", false,
                told(night(20, Ended.TAPER, 25, Ended.TRIPPED)), Optional.of(trip), "at about 80 %", false));

        assertThat(part(card, "What ended it")).contains("Rule 1, cell high", "At cell 1 3.712 V was found where 3.700 V is the limit");
        assertThat(part(card, "What to do now")).startsWith("Do not clear it yet.");
    }

    @Test
    void a_run_without_a_discharge_has_no_number() {
        assertThat(part(card(Outcome.STOPPED, List.of(), false), "The number")).isEqualTo("None: no discharge was ended.");
    }

    @Test
    void a_rest_that_did_not_settle_and_a_protection_that_opened_are_said() {
        Card card = card(Outcome.FINISHED, List.of(step(1, "rest", 0, 25, Ended.TIME, false),
                step(2, "discharge", -90, 25, Ended.PROTECTION, false)), false);

        assertThat(part(card, "What not to conclude")).contains("before the cells had settled", "own protection ended a step");
    }

    @Test
    void of_a_rehearsal_nothing_follows_for_any_cell() {
        Card card = MorningCard.of(12, rig, new Program("by day", false, program.steps()), new MorningCard.Known(Outcome.FINISHED,
                "", true, told(night(106, Ended.TAPER, 25, Ended.CUT_OFF)), Optional.empty(), "at about 40 %", false));

        assertThat(part(card, "What not to conclude")).startsWith("Nothing about your cells").contains("It ran attended");
        assertThat(part(card, "What to do now")).startsWith("Nothing at the bench");
    }
}
