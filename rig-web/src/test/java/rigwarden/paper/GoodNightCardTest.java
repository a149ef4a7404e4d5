package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Budget;
import rigwarden.findings.Nature;
import rigwarden.findings.StepFinding;
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

/** What a person is told before a night. */
class GoodNightCardTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");
    private static final LocalDateTime EVENING = LocalDateTime.of(2026, 1, 2, 22, 0);

    private Rig rig;
    private Program program;

    @BeforeEach
    void theReferencePack() {
        Read.Sound<Rig> read = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("eight-cells.toml"));
        rig = read.value();
        program = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("eight-cells-night.toml"), read)).value();
    }

    private static StepFinding step(int index, String kind, double seconds, double hottest, String where, Ended by) {
        Budget budget = new Budget(List.of(Budget.limits(Nature.GAIN, "shunt tolerance", 0.2)));
        StepFinding.Extreme volts = new StepFinding.Extreme(3.3, "cell_01_v");
        return new StepFinding(index, kind, seconds, new Uncertain(0, 1), budget, 0, new Uncertain(0, 1), volts, volts,
                new StepFinding.Extreme(hottest, where), 25, 0, 0, by, true);
    }

    private Card card(List<String> wakes, Optional<Trip> trip) {
        List<StepFinding> steps = List.of(step(1, "charge", 7200, 26.5, "cell_02_c", Ended.CHARGER),
                step(2, "rest", 5400, 24, "cell_02_c", Ended.SETTLED), step(3, "discharge", 36_000, 38.3, "cell_07_c", Ended.CUT_OFF));
        return GoodNightCard.of(rig, program, new GoodNightCard.Expected(steps, trip, EVENING.plusHours(9), "step 3, discharge.",
                "at about 40 %"), EVENING, wakes, List.of());
    }

    private static List<String> part(Card card, String heading) {
        return card.parts().stream().filter(p -> p.heading().equals(heading)).map(Card.Part::lines).findFirst().orElseThrow();
    }

    @Test
    void each_step_has_its_time_its_end_and_what_ends_it_and_what_was_not_reached_is_said() {
        assertThat(part(card(List.of(), Optional.empty()), "The steps, if it began now")).startsWith(
                "1 charge, 2 h 00 min, until Sat 00:00: the charger itself", "2 rest, 1 h 30 min, until Sat 01:30: the cells settled",
                "3 discharge, 10 h 00 min, until Sat 11:30: the first cell at its cut-off", "4 rest: not reached").hasSize(9);
    }

    @Test
    void the_hottest_spot_is_named_as_it_is_called_at_the_bench() {
        assertThat(part(card(List.of(), Optional.empty()), "The hottest expected spot").getFirst())
                .isEqualTo("cell 7, body, 38.3 °C, in step 3 (discharge)");
    }

    @Test
    void every_quantity_says_who_opens_first_and_who_is_left_with_the_computer_dead() {
        List<String> opens = part(card(List.of(), Optional.empty()), "Who opens first");

        assertThat(opens.getFirst()).startsWith("cell high: programme's ceiling 3.60 V, then ").contains("With the computer dead: ");
        assertThat(opens.get(1)).startsWith("cell low: inverter quits, per cell of equal cells 2.63 V, then programme's cut-off 2.50 V");
        assertThat(opens).filteredOn(line -> line.startsWith("current through ")).hasSize(rig.devices().size());
    }

    @Test
    void nobody_is_told_that_something_will_wake_him_when_nothing_will() {
        Card silent = card(List.of(), Optional.empty());
        Card loud = card(List.of("phone: web hook at https://hooks.example"), Optional.empty());

        assertThat(part(silent, "What will wake you").getFirst()).startsWith("No notices");
        assertThat(silent.summary()).contains("no notices");
        assertThat(part(loud, "What will wake you").getFirst()).startsWith("phone: web hook");
        assertThat(loud.summary()).contains("notices by phone");
    }

    @Test
    void that_nothing_is_proved_is_said_plainly() {
        assertThat(part(card(List.of(), Optional.empty()), "Last proofs").getFirst())
                .startsWith("None is on record: nothing here shows that either way to stop works.");
    }

    @Test
    void a_rehearsal_that_tripped_comes_before_everything_else() {
        Trip trip = new Trip(Rules.of(rig).getFirst(), rig.channels(Role.CURRENT).getFirst(), 3.712, 3.70, 5, 77);

        Card.Part first = card(List.of(), Optional.of(trip)).parts().getFirst();

        assertThat(first.heading()).isEqualTo("DO NOT START THIS: its rehearsal tripped");
        assertThat(first.weight()).isEqualTo(Card.Weight.URGENT);
    }

    @Test
    void breakfast_and_the_end_are_both_told() {
        assertThat(part(card(List.of(), Optional.empty()), "The cells at breakfast"))
                .containsExactly("Sat 07:00: step 3, discharge.", "At the end they are left at about 40 %.");
    }

    @Test
    void on_a_terminal_no_line_is_wider_than_a_terminal() {
        assertThat(card(List.of(), Optional.empty()).lines()).allMatch(line -> line.length() <= 120);
    }
}
