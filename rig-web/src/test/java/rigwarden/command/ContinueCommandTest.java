package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A discharge whose supply is cut after twenty minutes, and what a person may do with it then. */
class ContinueCommandTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");
    private static final String DISCHARGE = """
            name = "half the rate, once"
            unattended = false
            leave_empty = true

            [[step]]
            kind = "discharge"
            rate_c = 0.5
            cut_off_v = 2.50
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void a_run_that_was_cut() throws IOException {
        Path programme = Files.writeString(folder.resolve("once.toml"), DISCHARGE);
        Spoken cut = Spoken.of("rehearse", RIG.toString(), programme.toString(), "--logbook", book(), "--cut-at", "0:20");
        assertThat(cut.out()).contains("The process that ran it died", "The last step was 1 of 1, discharge, ended by: a crash or a power cut.", "    - at least 1");
    }

    @AfterEach
    void every_run_that_was_made_replays_to_the_same_orders() {
        assertThat(Replays.all(folder.resolve("book"))).isPositive();
    }

    private String book() {
        return folder.resolve("book").toString();
    }

    @Test
    void it_goes_on_to_its_end_and_the_number_of_both_parts_is_marked_and_wider() throws IOException {
        Spoken on = Spoken.of("continue", "1", "--logbook", book());

        assertThat(on.exit()).isEqualTo(Exits.DONE);
        assertThat(on.out()).contains("INTERRUPTED", "drained in the outage", "it decides neither for nor against a rating", "goes on with run 0001");
        found();
        assertThat(Spoken.of("continue", "1", "--logbook", book()).err()).contains("Run 1 cannot go on.", "continued as run 0002").doesNotContain("abandon");
        assertThat(Spoken.of("abandon", "1", "--logbook", book(), "--because", "late").err()).contains("continued as run 0002");
    }

    /** The findings are of both parts, and the card tells the same charge; without the first part's file they say so and tell the second alone. */
    private void found() throws IOException {
        Spoken both = Spoken.of("findings", "2", "--logbook", book());
        assertThat(both.out()).contains("It went on with run 0001, which was broken off in step 1: all here is of both, and such a step is one.",
                "interrupted; rated 105 Ah: not decided at rated conditions: the test was interrupted", "INTERRUPTED for 10.1 min at 52.63 A",
                "unseen until it was open", " of run 1 to scan ");
        JsonNode json = new ObjectMapper().readTree(Spoken.of("findings", "2", "--json", "--logbook", book()).out());
        JsonNode capacity = StreamSupport.stream(json.get("findings").spliterator(), false).filter(f -> f.get("kind").asText().equals("capacity"))
                .findFirst().orElseThrow();
        assertThat(capacity.get("scans_are_of_runs")).hasToString("[1,2]");
        assertThat(Spoken.of("runs", "2", "--logbook", book()).out()).contains(String.format(Locale.ROOT, "%.2f Ah ±", capacity.get("value").asDouble()));
        assertThat(Spoken.of("runs", "1", "--logbook", book()).out()).contains("    - at least 1", "decides neither for nor against a rating, whatever it gives when it goes on");
        assertThat(Spoken.of("findings", "1", "--logbook", book()).out()).contains("broken off, by a crash or a power cut", "ENERGY, step 1, discharge: −5",
                "Run 0002 went on with it: `rigwarden findings 2` answers for both.");

        assertThat(Spoken.of("compare", "1", "2", "--logbook", book()).err()).contains("Nothing was compared: run 2 went on with run 1");
        assertThat(Spoken.of("findings", "2", "--beside", "1", "--logbook", book()).out()).contains("run 1 and this run are parts of one");
        assertThat(Spoken.of("findings", "1", "--beside", "2", "--logbook", book()).out()).contains("run 2 and this run are parts of one");

        Path first = folder.resolve("book").resolve("runs").resolve("0001.db");
        Files.move(first, folder.resolve("away.db"));
        assertThat(Spoken.of("findings", "2", "--logbook", book()).out()).contains("It went on in step 1 with run 0001, which cannot be read",
                "all here is of this part alone", "at least ");
        assertThat(Spoken.of("runs", "2", "--logbook", book()).out()).contains("which cannot be read", "at least ");
        Files.move(folder.resolve("away.db"), first);
    }

    @Test
    void after_half_an_hour_it_does_not_and_the_message_says_how_long_it_was() {
        Spoken late = Spoken.of("continue", "1", "--logbook", book(), "--after", "31");

        assertThat(late.exit()).isEqualTo(Exits.REFUSED);
        assertThat(late.err()).contains("the outage: found 31.0 min; allowed is 0 to 30 min.");
    }

    @Test
    void a_run_that_was_abandoned_is_closed_for_good() {
        assertThat(Spoken.of("abandon", "1", "--logbook", book(), "--because", "the fuse was loose").exit()).isEqualTo(Exits.DONE);

        Spoken on = Spoken.of("continue", "1", "--logbook", book());
        assertThat(on.exit()).isEqualTo(Exits.REFUSED);
        assertThat(on.err()).contains("Run 1 cannot go on.", "the fuse was loose");
    }

    @Test
    void another_rig_file_or_programme_is_refused() throws IOException {
        Path other = Files.writeString(folder.resolve("other.toml"), DISCHARGE.replace("0.5", "0.4"));

        Spoken on = Spoken.of("continue", "1", RIG.toString(), other.toString(), "--logbook", book());

        assertThat(on.exit()).isEqualTo(Exits.REFUSED);
        assertThat(on.err()).contains("the programme: found SHA-256");
    }
}
