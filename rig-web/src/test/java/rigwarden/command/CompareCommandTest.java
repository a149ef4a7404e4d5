package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One emulated cell rehearsed three times: the same, the same again with a cell that leaks, and another specimen. */
class CompareCommandTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");
    private static final String FULL_TO_EMPTY = """
            name = "full to empty"
            unattended = false
            leave_empty = true

            [[step]]
            kind = "charge"
            rate_c = 0.5
            ceiling_v = 3.60
            taper_c = 0.05

            [[step]]
            kind = "rest"
            at_least_min = 30
            at_most_min = 30

            [[step]]
            kind = "discharge"
            rate_c = 0.5
            cut_off_v = 2.50

            [[step]]
            kind = "rest"
            at_least_min = 30
            at_most_min = 30
            """;

    @TempDir
    private static Path folder;

    private static final String REST = """
            name = "rest"
            unattended = false
            leave_empty = true

            [[step]]
            kind = "rest"
            at_least_min = 30
            at_most_min = 30
            """;

    @BeforeAll
    static void three_runs() throws IOException {
        rehearse(FULL_TO_EMPTY, "--seed", "3");
        rehearse(FULL_TO_EMPTY, "--seed", "3", "--with", "cell 1 leaks 0.5 A at 0:05");
        rehearse(REST, "--seed", "4");
    }

    private static void rehearse(String programme, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("programme.toml"), programme);
        Spoken said = Spoken.of(Stream.concat(Stream.of("rehearse", RIG.toString(), file.toString(), "--logbook", book()), Stream.of(more))
                .toArray(String[]::new));
        assertThat(said.exit()).as(said.err() + said.out()).isEqualTo(Exits.DONE);
    }

    private static String book() {
        return folder.resolve("book").toString();
    }

    private static Spoken compare(String... runs) {
        return Spoken.of(Stream.concat(Stream.of("compare", "--logbook", book()), Stream.of(runs)).toArray(String[]::new));
    }

    @Test
    void an_ampere_hour_that_leaked_is_seen_though_the_shunt_is_less_sure_of_each_and_the_resistance_did_not_change_that_this_can_measure() {
        Spoken said = compare("1", "2");

        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        assertThat(said.out()).containsSubsequence("what changed since run 0001", "IN RUN 0002", "CAPACITY, capacity at 0.50 C: ",
                " then, ", " later: −", "RESISTANCE, resistance of cell 1", "no difference that this can measure", "would have been seen",
                "how sure, and why:", "budget of the difference", "errs alike in both and falls out: shunt tolerance", "not compared: joint");
    }

    @Test
    void another_specimen_the_same_run_and_one_that_there_is_not_are_refused() {
        Spoken other = compare("1", "2", "3");

        assertThat(other.exit()).isEqualTo(Exits.REFUSED);
        assertThat(other.out()).isEmpty();
        assertThat(other.err()).contains("Nothing was compared: run 1 rehearsed specimen 3 and run 3 specimen 4: two packs.");
        assertThat(compare("1", "1").err()).contains("run 1 is named twice");
        assertThat(compare("1", "9").err()).contains("There is no run 9");
    }
}
