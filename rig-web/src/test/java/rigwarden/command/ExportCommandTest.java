package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.RunReader;
import rigwarden.paper.CsvExport;

/** A run handed on: as one table of scans, and as a file for each cell, both with what their columns mean. */
class ExportCommandTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");
    private static final String EMPTY_AND_PARK = """
            name = "empty, then parked"
            unattended = false

            [[step]]
            kind = "discharge"
            rate_c = 0.5
            cut_off_v = 2.50

            [[step]]
            kind = "rest"
            at_least_min = 30
            at_most_min = 30

            [[step]]
            kind = "park"
            rate_c = 0.5
            share = 0.4
            ceiling_v = 3.60
            """;

    @TempDir
    private static Path folder;

    @BeforeAll
    static void a_run_out_and_in() throws IOException {
        Path programme = Files.writeString(folder.resolve("park.toml"), EMPTY_AND_PARK);
        Spoken said = Spoken.of("rehearse", RIG.toString(), programme.toString(), "--logbook", book());
        assertThat(said.exit()).as(said.err() + said.out()).isEqualTo(Exits.DONE);
    }

    private static String book() {
        return folder.resolve("book").toString();
    }

    @Test
    void a_folder_that_cannot_be_written_into_is_no_defect_of_ours_but_said() throws IOException {
        Path file = Files.writeString(folder.resolve("in the way"), "");

        for (String form : List.of("scans", "cells")) {
            Spoken said = export(file, "--as", form);
            assertThat(said.exit()).isEqualTo(Exits.REFUSED);
            assertThat(said.err()).contains("in the way cannot be used: something of that name is in the way.");
        }
    }

    private static Spoken export(Path to, String... more) {
        return Spoken.of(Stream.concat(Stream.of("export", "1", "--to", to.toString(), "--logbook", book()), Stream.of(more)).toArray(String[]::new));
    }

    private static List<List<String>> rows(Path csv) throws IOException {
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(csv)) {
            return reader.stream().map(CsvRecord::getFields).toList();
        }
    }

    private static JsonNode json(Path file) throws IOException {
        return new ObjectMapper().readTree(file.toFile());
    }

    /** Each field of a table as its metadata says that it is. */
    private static void holds(JsonNode metadata, List<List<String>> table) {
        JsonNode columns = metadata.get("tableSchema").get("columns");
        List<String> header = new ArrayList<>();
        columns.forEach(column -> header.add(column.get("titles").asText()));
        assertThat(table.getFirst()).containsExactlyElementsOf(header);
        for (int i = 0; i < columns.size(); i++) {
            JsonNode type = columns.get(i).get("datatype");
            String base = type.isObject() ? type.get("base").asText() : type.asText();
            String least = type.isObject() ? "" : "-?";
            String form = Map.of("decimal", least + "[0-9]+(\\.[0-9]+)?", "nonNegativeInteger", "[0-9]+", "string", "[a-z0-9_]+").get(base);
            int place = i;
            Stream<String> fields = table.stream().skip(1).map(row -> row.get(place));
            String wanted = columns.get(i).get("required").asBoolean() ? form : "(" + form + ")?";
            assertThat(fields.filter(field -> !field.matches(wanted)).limit(3)).as(header.get(i) + " is " + wanted).isEmpty();
        }
    }

    @Test
    void every_column_of_the_table_is_described_beside_it_and_a_validator_and_the_fields_agree() throws IOException {
        Path to = folder.resolve("scans");

        Spoken said = export(to);

        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        JsonNode metadata = json(to.resolve("run-0001.csv-metadata.json"));
        assertThat(Schemas.faults("csvw-table.schema.json", metadata)).isEmpty();
        assertThat(metadata.get("url").asText()).isEqualTo("run-0001.csv");
        holds(metadata, rows(to.resolve("run-0001.csv")));
        assertThat(said.out()).contains("run-0001.csv: ", "scans", "run-0001.csv-metadata.json: what its columns mean");
        assertThat(metadata.get("dc:description").asText()).startsWith("A rehearsal");
    }

    @Test
    void the_validator_refuses_a_column_without_a_unit_an_unknown_type_and_a_wrong_null() throws IOException {
        Path csv = Files.writeString(folder.resolve("sound.csv"), "");
        JsonNode sound;
        try (RunReader reader = RunReader.open(Path.of(book()).resolve("runs").resolve("0001.db"))) {
            sound = json(CsvExport.describe(reader, 1, csv));
        }

        for (String key : List.of("http://qudt.org/schema/qudt/ucumCode", "dc:description", "titles")) {
            ObjectNode without = sound.deepCopy();
            ((ObjectNode) without.get("tableSchema").get("columns").get(2)).remove(key);
            assertThat(Schemas.faults("csvw-table.schema.json", without)).as("without " + key).isNotEmpty();
        }
        for (Map.Entry<String, String> wrong : Map.of("datatype", "float32", "null", "NaN", "name", "_a b").entrySet()) {
            ObjectNode other = sound.deepCopy();
            ((ObjectNode) other.get("tableSchema").get("columns").get(2)).put(wrong.getKey(), wrong.getValue());
            assertThat(Schemas.faults("csvw-table.schema.json", other)).as(wrong.toString()).isNotEmpty();
        }
    }

    @Test
    void a_cells_file_has_the_formats_own_labels_units_and_types_and_its_name_says_who_what_and_when() throws IOException {
        Path to = folder.resolve("cells");

        Spoken said = export(to, "--as", "cells", "--workshop", "HUT");

        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        String stem = one(to, ".bdf.csv").replace(".bdf.csv", "");
        assertThat(stem).matches("HUT__hut-bench-one-cell-01__[0-9]{8}_001");
        JsonNode metadata = json(to.resolve(stem + ".bdf.csv-metadata.json"));
        assertThat(Schemas.faults("csvw-table.schema.json", metadata)).isEmpty();
        assertThat(Schemas.faults("cell-dataset.schema.json", json(to.resolve(stem + ".metadata.json")))).isEmpty();
        holds(metadata, rows(to.resolve(stem + ".bdf.csv")));
        Map<String, List<String>> known = rows(Path.of("src", "test", "resources", "battery-data-format.csv")).stream()
                .collect(Collectors.toMap(List::getFirst, row -> row));
        for (JsonNode column : metadata.get("tableSchema").get("columns")) {
            List<String> row = known.get(column.get("name").asText());
            assertThat(row).as(column.get("name").asText()).isNotNull();
            assertThat(column.get("titles").asText()).isEqualTo(row.get(1));
            assertThat(column.path("http://qudt.org/schema/qudt/ucumCode").asText("")).isEqualTo(row.get(2));
            assertThat(type(column)).isEqualTo(row.get(3));
            assertThat(column.get("propertyUrl").asText()).endsWith("battery-data-format#" + row.getFirst());
        }
        List<String> required = known.values().stream().filter(row -> row.get(4).equals("True")).map(row -> row.get(1)).toList();
        assertThat(required).hasSize(3);
        assertThat(rows(to.resolve(stem + ".bdf.csv")).getFirst()).containsAll(required);
    }

    private static String type(JsonNode column) {
        JsonNode type = column.get("datatype");
        String base = type.isObject() ? type.get("base").asText() : type.asText();
        return base.equals("nonNegativeInteger") ? "integer" : base;
    }

    private static String one(Path folder, String end) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            List<String> found = files.map(f -> f.getFileName().toString()).filter(name -> name.endsWith(end)).toList();
            assertThat(found).hasSize(1);
            return found.getFirst();
        }
    }

    @Test
    void time_never_goes_back_steps_never_reset_and_the_sums_are_those_of_the_rows_and_of_the_findings() throws IOException {
        Path to = folder.resolve("sums");
        export(to, "--as", "cells");
        Table table = new Table(rows(to.resolve(one(to, ".bdf.csv"))));

        double[] seconds = table.numbers("Test Time / s");
        double[] amps = table.numbers("Current / A");
        double[] volts = table.numbers("Voltage / V");
        double[] ones = new double[seconds.length];
        Arrays.fill(ones, 1);
        double in = leftAndRight(seconds, i -> Math.max(i, 0), amps, ones);
        double out = leftAndRight(seconds, i -> Math.max(-i, 0), amps, ones);
        double wattsIn = leftAndRight(seconds, i -> Math.max(i, 0), amps, volts);

        assertThat(table.neverFalls(seconds)).isTrue();
        assertThat(table.neverFalls(table.numbers("Step Count / 1"))).isTrue();
        assertThat(table.last("Step Count / 1")).isEqualTo(3);
        assertThat(table.words("Step Type")).contains("discharge", "rest", "park");
        assertThat(table.last("Charging Capacity / Ah")).isCloseTo(in, within(2e-4)).isGreaterThan(15);
        assertThat(table.last("Discharging Capacity / Ah")).isCloseTo(out, within(2e-4)).isGreaterThan(30);
        assertThat(table.last("Net Capacity / Ah")).isCloseTo(in - out, within(2e-4));
        assertThat(table.last("Charging Energy / Wh")).isCloseTo(wattsIn, within(2e-3));
        JsonNode findings = new ObjectMapper().readTree(Spoken.of("findings", "1", "--logbook", book(), "--json").out()).get("findings");
        JsonNode charge = findings.findParents("value").stream().filter(f -> f.get("kind").asText().equals("charge")
                && f.get("about").asText().startsWith("step 1")).findFirst().orElseThrow();
        assertThat(table.last("Discharging Capacity / Ah")).as("by the sensor's own count").isCloseTo(-charge.get("value").asDouble(), within(0.05));
    }

    /** A real run's beginning is a label in local time: only whoever exports it knows the zone. */
    @Test
    void an_absolute_time_is_written_where_the_zone_is_told_and_the_files_name_has_the_day_on_which_the_run_began() throws Exception {
        Path real = Files.createDirectories(folder.resolve("real").resolve("runs")).resolve("0001.db");
        Files.copy(Path.of(book()).resolve("runs").resolve("0001.db"), real);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + real); Statement statement = connection.createStatement()) {
            statement.execute("UPDATE about SET value = '1970-01-02T01:00:00' WHERE key = 'started'");
        }
        Path to = folder.resolve("zoned");

        Spoken said = Spoken.of("export", "1", "--to", to.toString(), "--logbook", folder.resolve("real").toString(), "--as", "cells",
                "--zone", "+01:00");

        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        String name = one(to, ".bdf.csv");
        assertThat(name).isEqualTo("workshop__hut-bench-one-cell-01__19700102_001.bdf.csv");
        Table table = new Table(rows(to.resolve(name)));
        assertThat(table.numbers("Unix Time / s")[0] - table.numbers("Test Time / s")[0]).isCloseTo(86_400, within(0.002));
        assertThat(Schemas.faults("csvw-table.schema.json", json(to.resolve(name + "-metadata.json")))).isEmpty();
    }

    /** The mean of the sum of left ends and the sum of right ends, per hour: another way to the trapezoid. */
    private static double leftAndRight(double[] seconds, DoubleUnaryOperator gate, double[] amps, double[] times) {
        double left = 0;
        double right = 0;
        for (int i = 1; i < seconds.length; i++) {
            left += gate.applyAsDouble(amps[i - 1]) * times[i - 1] * (seconds[i] - seconds[i - 1]);
            right += gate.applyAsDouble(amps[i]) * times[i] * (seconds[i] - seconds[i - 1]);
        }
        return (left + right) / 2 / 3600;
    }

    @Test
    void what_cannot_be_exported_so_is_refused_in_one_sentence() {
        assertThat(export(folder.resolve("no"), "--as", "rows").err()).contains("--as is rows: allowed is scans or cells");
        assertThat(export(folder.resolve("no"), "--as", "cells", "--workshop", "a__b").err()).contains("1 to 24 letters, digits and hyphens");
        assertThat(export(folder.resolve("no"), "--as", "cells", "--zone", "nowhere").err()).contains("a time zone, for example UTC");
        assertThat(Spoken.of("export", "7", "--to", folder.toString(), "--logbook", book()).err()).contains("There is no run 7");
    }

    /** A cell's file by its labels. */
    private record Table(List<List<String>> rows) {
        List<String> words(String label) {
            int place = rows.getFirst().indexOf(label);
            return rows.stream().skip(1).map(row -> row.get(place)).toList();
        }

        double[] numbers(String label) {
            return words(label).stream().mapToDouble(Double::parseDouble).toArray();
        }

        double last(String label) {
            return Double.parseDouble(words(label).getLast());
        }

        boolean neverFalls(double[] values) {
            for (int i = 1; i < values.length; i++) {
                if (values[i] < values[i - 1]) {
                    return false;
                }
            }
            return true;
        }
    }
}
