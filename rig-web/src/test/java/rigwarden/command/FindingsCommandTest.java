package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a run found, for a person and for a program. */
class FindingsCommandTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");

    @TempDir
    private Path folder;

    private String book() {
        return folder.resolve("book").toString();
    }

    @Test
    void the_answer_comes_first_then_how_sure_and_why_then_what_would_shrink_it_and_last_what_it_cannot_say() throws IOException {
        Path programme = Files.writeString(folder.resolve("once.toml"), Rehearsing.HALF_RATE_ONCE);
        assertThat(Spoken.of("rehearse", RIG.toString(), programme.toString(), "--logbook", book()).exit()).isEqualTo(Exits.DONE);

        Spoken text = Spoken.of("findings", "1", "--logbook", book());
        Spoken json = Spoken.of("findings", "1", "--logbook", book(), "--json");

        assertThat(text.exit()).isEqualTo(Exits.DONE);
        assertThat(text.out()).containsSubsequence("THE ANSWERS", "  The cell gives at least ", " Ah at 0.50 C, ",
                "how full it started is not known; rated 105 Ah: not decided at rated conditions: the capacity is a lower bound only",
                "the rating holds at 25 ± 5 °C, 0.05…0.55 C, to 2.50 V, counted in Ah; the usual conditions, none being stated", "HOW SURE, AND WHY",
                "CAPACITY, step 1, discharge: at least", "how full it started nobody knows", "largest: shunt tolerance; calibrate the shunt: ± ",
                "VERDICT, step 1, discharge: rated 105 Ah at 25 ± 5 °C",
                "at: 0.", "as it was measured: ", "budget (u in Ah", "WHAT THIS RUN CANNOT SAY",
                "INCREMENTAL", "coarser than the 0.1 mV", " rows, 0 missing");
        assertThat(text.out()).contains("A rehearsal: every part was emulated", "RESISTANCE, cell 1: ", "after 10.0 s", "by: ");
        JsonNode whole = new ObjectMapper().readTree(json.out());
        JsonNode capacity = whole.get("findings").get(0);
        assertThat(capacity.get("kind").asText()).isEqualTo("capacity");
        assertThat(capacity.get("answer").asText()).isEqualTo("at_least");
        assertThat(capacity.get("unit").asText()).isEqualTo("Ah");
        assertThat(capacity.get("value").asDouble()).isBetween(30.0, 70.0);
        assertThat(capacity.get("expanded").asDouble()).isBetween(0.01, 1.0);
        assertThat(capacity.get("budget").size()).isGreaterThan(5);
        assertThat(capacity.get("to_shrink_it").asText()).startsWith("calibrate the shunt");
        assertThat(capacity.get("scans").get(1).asLong()).isGreaterThan(10_000);

        assertThat(text.out()).contains("at: −52.62 A to 0.00 A, after 10.0 s; end of step 1, discharge, 2.", " V before it stopped; cells ")
                .containsPattern("HEAT, step 1, discharge, cell 1, (body|[+−] stud): ");
        Path file = folder.resolve("book").resolve("runs").resolve("0001.db");
        Files.copy(file, file.resolveSibling("0002.db"));
        Spoken beside = Spoken.of("findings", "1", "--logbook", book(), "--beside", "2");
        assertThat(beside.out()).contains("SQUARE, run 2 to this run: none", "terminal_01p_c ", ", by the square ");
        assertThat(Spoken.of("findings", "1", "--logbook", book(), "--beside", "1").err()).contains("Run 1 beside itself says nothing");
        assertThat(Spoken.of("findings", "1", "--logbook", book(), "--beside", "9").err()).contains("There is no run 9");

        changed(file);
    }

    /** One reading of a run that was closed is moved by a code: nobody is told a number of it without being told that. */
    private void changed(Path file) throws IOException {
        assertThat(Spoken.of("findings", "1", "--logbook", book()).out()).doesNotContain("WAS CHANGED");
        assertThat(file.toFile().setWritable(true)).isTrue();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file); Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE scan SET c00 = c00 + 1 WHERE number = 500");
        } catch (SQLException e) {
            throw new IOException(e);
        }
        assertThat(Spoken.of("findings", "1", "--logbook", book()).out()).startsWith("THE FILE OF RUN 0001 WAS CHANGED since it was closed");
        assertThat(Spoken.of("runs", "1", "--logbook", book()).out()).contains("THE FILE OF RUN 0001 WAS CHANGED");
        assertThat(Spoken.of("findings", "1", "--logbook", book(), "--json").out()).contains("\"files_changed\" : [ \"THE FILE OF RUN 0001");
    }

    @Test
    void a_file_that_is_no_run_is_refused_in_plain_words_each() throws IOException {
        Path runs = Files.createDirectories(folder.resolve("book").resolve("runs"));
        Files.writeString(runs.resolve("0001.db"), "no data base at all, but long enough to be taken for the beginning of one: it is not, whatever its name says");
        Files.writeString(runs.resolve("0002.db"), "");

        assertThat(Spoken.of("findings", "1", "--logbook", book()).err()).contains("0001.db cannot be read: it is no run file, nor a ledger");
        assertThat(Spoken.of("findings", "2", "--logbook", book()).err()).contains("0002.db cannot be read: it was not written by Rigwarden, or is empty");
        assertThat(Spoken.of("findings", "1", "--logbook", book()).exit()).isEqualTo(Exits.REFUSED);
    }

    @Test
    void a_run_that_there_is_not_is_refused_with_the_way_to_those_that_there_are() {
        Spoken none = Spoken.of("findings", "7", "--logbook", book());

        assertThat(none.exit()).isEqualTo(Exits.REFUSED);
        assertThat(none.err()).contains("There is no run 7", "`rigwarden runs`");
    }
}
