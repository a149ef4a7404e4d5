package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;

/** A log that somebody else wrote becomes a run, and what was wrong with it is said. */
class ImportCommandTest {
    private static final String MAP = """
            name = "a bench that counts nothing"

            [cells]
            series = 1
            parallel = 1
            rated_ah = 10
            ceiling_v = 3.65
            cut_off_v = 2.5

            [time]
            column = "minutes"
            unit_s = 60

            [current]
            column = "load mA"
            unit_a = 0.001
            into_cells = "negative"
            most_a = 50
            gain_percent = 0.1
            offset_a = 0.001
            step_a = 0.001

            [[voltage]]
            column = "cell"
            cell = 1
            unit_v = 1
            least_v = 0
            most_v = 5
            gain_percent = 0.1
            offset_v = 0.001
            step_v = 0.001

            [rest]
            below_a = 0.05
            """;

    @TempDir
    private Path folder;

    /** Ten hours at 1 A to 2.4 V, a row a minute, with a rest before. */
    private static List<String> lines() {
        return IntStream.rangeClosed(0, 600).mapToObj(minute -> String.format(Locale.ROOT, "%d,%d,%.3f", minute, minute < 60 ? 0 : 1000,
                3.3 - (minute < 60 ? 0 : 0.9 * Math.pow((minute - 60) / 540.0, 8)))).collect(Collectors.toList());
    }

    private Path written(List<String> lines) throws IOException {
        return Files.writeString(folder.resolve("log.csv"), "minutes,load mA,cell\n" + String.join("\n", lines) + "\n");
    }

    private Path map() throws IOException {
        return Files.writeString(folder.resolve("map.toml"), MAP);
    }

    private String book() {
        return folder.resolve("book").toString();
    }

    private Spoken imported(Path csv) throws IOException {
        return Spoken.of("import", csv.toString(), "--map", map().toString(), "--logbook", book());
    }

    @Test
    void a_log_becomes_a_run_that_is_listed_answers_with_findings_and_is_exported() throws IOException {
        Spoken said = imported(written(lines()));

        Spoken runs = Spoken.of("runs", "--logbook", book());
        Spoken findings = Spoken.of("findings", "1", "--logbook", book(), "--json");
        Spoken text = Spoken.of("findings", "1", "--logbook", book());
        Spoken export = Spoken.of("export", "1", "--logbook", book(), "--to", folder.toString());
        assertThat(said.err()).isEmpty();
        assertThat(said.exit()).isEqualTo(Exits.DONE);
        assertThat(said.out()).contains("Run 0001: 601 of 601 lines became rows in 2 steps, 10.00 h", "`rigwarden findings 1`").doesNotContain("line ");
        assertThat(runs.out()).contains("0001", "finished", "a bench that counts nothing · imported");
        assertThat(text.out()).contains("A log from elsewhere: log.csv, SHA-256 ", "CAPACITY, step 2, discharge: at least", "the sum of the rows",
                "nobody knows how warm the cells were");
        JsonNode capacity = new ObjectMapper().readTree(findings.out()).get("findings").get(0);
        assertThat(capacity.get("value").asDouble()).isBetween(8.999, 9.001);
        assertThat(capacity.get("expanded").asDouble()).isBetween(0.01, 0.05);
        assertThat(export.exit()).isEqualTo(Exits.DONE);
        assertThat(Files.readAllLines(folder.resolve("run-0001.csv"))).hasSize(602);
    }

    @Test
    void gzipped_it_is_the_same() throws IOException {
        Path plain = written(lines());
        Path zipped = folder.resolve("log.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(zipped))) {
            out.write(Files.readString(plain).getBytes(StandardCharsets.UTF_8));
        }

        Spoken said = imported(zipped);

        assertThat(said.out()).contains("Run 0001: 601 of 601 lines became rows in 2 steps, 10.00 h");
    }

    @Test
    void every_line_that_is_amiss_is_named_counted_and_kept() throws IOException {
        List<String> lines = lines();
        lines.set(100, "100,1000");
        lines.set(200, "200,1000,");
        lines.set(300, "300,9.9E37,3.2");
        lines.set(400, "400,1000,OVER");
        lines.set(450, "3,1000,3.2");
        lines.set(500, "499,1000,3.2");

        Spoken said = imported(written(lines));

        assertThat(said.exit()).isEqualTo(Exits.DONE);
        assertThat(said.out()).contains("line 102: it has 2 fields where the heading has 3", "line 202: cell is empty",
                "line 302: load mA is 9.9E37, beyond what the map allows", "line 402: cell is \"OVER\", which is no number",
                "line 452: its time is 180 s, and that of the line before 26940 s", "line 502: its time, 29940 s, is that of the line before");
        assertThat(said.out()).contains("1 × a line of another width than the heading: left out", "1 × a reading that is not there",
                "1 × a reading beyond what the map allows", "3 × a line later than usual", "598 of 601 lines became rows");
        try (RunReader reader = RunReader.open(Path.of(book(), "runs", "0001.db"))) {
            assertThat(reader.events()).filteredOn(e -> e.kind().equals("line_amiss")).extracting(StoredEvent::words).hasSize(9)
                    .contains("line 102: it has 2 fields where the heading has 3");
        }
        assertThat(Spoken.of("findings", "1", "--logbook", book()).out()).contains("rows or their currents are missing");
    }

    @Test
    void a_clock_that_is_set_back_within_a_step_costs_that_step_its_charge() throws IOException {
        List<String> lines = lines();
        for (int i = 300; i < lines.size(); i++) {
            lines.set(i, lines.get(i).replaceFirst("^\\d+", String.valueOf(i - 200)));
        }

        Spoken said = imported(written(lines));

        assertThat(said.out()).contains("line 302: its time is 6000 s, and that of the line before 17940 s: a clock that was set, or a second one");
        assertThat(Spoken.of("findings", "1", "--logbook", book()).out())
                .contains("CHARGE, step 2, discharge: not said: the rows' time went back within the step");
    }

    @Test
    void two_clocks_in_one_file_are_refused_and_nothing_is_kept() throws IOException {
        List<String> lines = lines();
        for (int i = 1; i < lines.size(); i += 2) {
            lines.set(i, lines.get(i).replaceFirst("^\\d+", "-" + (1000 - i)));
        }

        Spoken said = imported(written(lines));

        assertThat(said.exit()).isEqualTo(Exits.REFUSED);
        assertThat(said.err()).contains("log.csv has two clocks: in 300 of 601 lines the time goes back");
        assertThat(Path.of(book(), "runs", "0001.db")).doesNotExist();
    }

    @Test
    void a_column_that_is_not_there_is_refused_with_those_that_are() throws IOException {
        Path csv = Files.writeString(folder.resolve("log.csv"), "minutes,load,cell\n0,1,3.3\n");

        Spoken said = imported(csv);

        assertThat(said.exit()).isEqualTo(Exits.REFUSED);
        assertThat(said.err()).contains("The map names the column \"load mA\", and the heading has it not; it has: minutes, load, cell.");
    }

    @Test
    void an_empty_file_no_line_that_can_be_kept_and_a_broken_gzip_are_refused_in_one_sentence_each() throws IOException {
        Path plain = written(lines());
        Path zipped = folder.resolve("log.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(zipped))) {
            out.write(Files.readAllBytes(plain));
        }
        byte[] whole = Files.readAllBytes(zipped);
        Path half = Files.write(folder.resolve("half.csv.gz"), Arrays.copyOf(whole, whole.length / 2));

        assertThat(imported(Files.writeString(folder.resolve("empty.csv"), "")).err()).contains("empty.csv has no heading");
        assertThat(imported(Files.writeString(folder.resolve("none.csv"), "minutes,load mA,cell\nx,1,2\n")).err())
                .contains("none.csv has no line that could be kept, of 1 after the heading; the first: line 2: ");
        assertThat(imported(half).err()).contains("half.csv.gz ends too soon, after line ", "nothing of it was kept");
        assertThat(imported(folder.resolve("nowhere.csv")).err()).contains("nowhere.csv is not there");
        Path noText = Files.write(folder.resolve("noise.csv"), new byte[] {7, 27, (byte) 0xff, ',', 1, 10, 3});
        assertThat(imported(noText).err()).contains("and the heading has it not; it has: signs that are no text, so that it is no CSV.");
    }

    @Test
    void what_only_a_run_of_a_rig_has_is_refused_for_a_log() throws IOException {
        imported(written(lines()));

        assertThat(Spoken.of("runs", "1", "--logbook", book()).out()).contains("is a log from elsewhere", "It makes no card");
        assertThat(Spoken.of("runs", "1", "--replay", "--logbook", book()).err()).contains("has neither rig nor programme");
    }

    @Test
    void every_key_of_a_map_lists_itself() {
        Spoken keys = Spoken.of("keys", "--map");

        assertThat(keys.out()).contains("[current]", "into_cells", "[[voltage]]", "[[temperature]]", "[counted]", "[[steps.stretch]]", "[rest]", "below_a",
                "with place other than room");
    }
}
