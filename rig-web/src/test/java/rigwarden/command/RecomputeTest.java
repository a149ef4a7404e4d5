package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run was recorded without a calibration; afterwards the shunt was calibrated, well and badly. What would each have given? */
class RecomputeTest {
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
    private static Path folder;

    @BeforeAll
    static void a_run_and_what_was_calibrated_after_it() throws IOException {
        Path rig = Files.copy(Path.of("..", "hardware", "rigs", "one-cell.toml"), folder.resolve("hut.toml"));
        Path programme = Files.writeString(folder.resolve("once.toml"), DISCHARGE);
        said("rehearse", rig.toString(), programme.toString(), "--logbook", book(), "--truth", folder.resolve("truth.json").toString());
        calibrate(rig, "good", "0.05", "1");
        calibrate(rig, "poor", "0.4", "1");
        calibrate(rig, "other", "0.05", "2");
        said("calibrate", rig.toString(), "cell_01_v", "--meter", meter("0.01", "0.0001", "10").toString(), "--rehearse", "--at", "2.6,3.0,3.4", "--logbook", book(),
                "--to", folder.resolve("tap").toString());
    }

    private static void calibrate(Path rig, String to, String percent, String seed) throws IOException {
        said("calibrate", rig.toString(), "current_a", "--meter", meter(percent, "0.001", "60").toString(), "--rehearse", "--at", "5,20,50",
                "--seed", seed, "--logbook", book(), "--to", folder.resolve(to).toString());
    }

    private static Path meter(String percent, String digit, String range) throws IOException {
        return Files.writeString(folder.resolve("meter.toml"), """
                name = "bench meter"
                percent = %s
                counts = 2
                digit = %s
                range = %s
                calibrated = "%s"
                holds_days = 365
                """.formatted(percent, digit, range, LocalDate.now(ZoneId.systemDefault()).minusDays(100)));
    }

    private static void said(String... arguments) {
        Spoken said = Spoken.of(arguments);
        assertThat(said.exit()).as(said.err() + said.out()).isEqualTo(Exits.DONE);
    }

    private static String book() {
        return folder.resolve("book").toString();
    }

    private static String file(String set) {
        return folder.resolve(set).resolve("hut." + (set.equals("tap") ? "cell_01_v" : "current_a") + ".calibration.toml").toString();
    }

    private static Spoken findings(String... more) {
        return Spoken.of(Stream.concat(Stream.of("findings", "1", "--logbook", book()), Stream.of(more)).toArray(String[]::new));
    }

    private static JsonNode charge(JsonNode findings) {
        for (JsonNode finding : findings.get("findings")) {
            if (finding.get("kind").asText().equals("charge")) {
                return finding;
            }
        }
        throw new AssertionError("no charge");
    }

    @Test
    void a_later_calibration_gives_the_charge_that_is_true_and_is_surer_of_it_and_a_poorer_one_is_less_sure() throws IOException {
        double truth = new ObjectMapper().readTree(folder.resolve("truth.json").toFile()).get("steps").get(0).get("charge_ah").asDouble();

        Spoken said = findings("--json", "--with-calibration", file("good"), file("poor"));

        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        JsonNode whole = new ObjectMapper().readTree(said.out());
        JsonNode recorded = charge(whole);
        JsonNode good = charge(whole.get("with_calibrations").get(0));
        JsonNode poor = charge(whole.get("with_calibrations").get(1));
        for (JsonNode one : new JsonNode[] {recorded, good, poor}) {
            assertThat(one.get("value").asDouble()).isCloseTo(truth, within(one.get("expanded").asDouble()));
        }
        assertThat(good.get("expanded").asDouble()).isLessThan(0.6 * recorded.get("expanded").asDouble());
        assertThat(poor.get("expanded").asDouble()).isGreaterThan(2 * good.get("expanded").asDouble());
        double gain = whole.get("with_calibrations").get(0).get("calibrations").get(0).get("gain").asDouble();
        assertThat(good.get("value").asDouble() / recorded.get("value").asDouble()).as("the shunt's gain, and its zero over an hour")
                .isCloseTo(gain, within(3e-4));
    }

    @Test
    void each_figure_says_which_calibration_it_rests_on() {
        Spoken said = findings("--with-calibration", file("good"), file("tap"));

        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        String today = LocalDate.now(ZoneId.systemDefault()).toString();
        assertThat(said.out()).doesNotContain("with B: ").containsSubsequence("what it would have found with other calibrations", "as recorded: no calibration lay beside",
                "with A: cell_01_v, made " + today, "current_a, made " + today, "THE FIGURES", "CAPACITY, step 1, discharge: at least",
                "rests on current_a, not calibrated; cell_01_v, not calibrated", "with A: at least",
                "rests on current_a, calibrated " + today + "; cell_01_v, calibrated " + today, "more are the same");
    }

    @Test
    void a_calibration_of_another_chip_channel_or_copy_and_an_edited_or_missing_one_are_refused_each_with_its_reason() throws IOException {
        Path edited = Files.writeString(folder.resolve("edited.toml"), Files.readString(Path.of(file("good"))) + "# looked at\n");

        assertThat(findings("--with-calibration", file("other")).err()).contains("is of specimen 2, and the run rehearsed specimen 1");
        assertThat(findings("--with-calibration", edited.toString()).err()).contains("edited.toml:", "not as `rigwarden calibrate` wrote it");
        assertThat(findings("--with-calibration", folder.resolve("none.toml").toString()).err()).contains("none.toml cannot be read");
        assertThat(findings("--with-calibration", file("other")).exit()).isEqualTo(Exits.REFUSED);
    }

    @Test
    void a_real_run_takes_no_calibration_of_an_emulated_copy_and_none_of_another_chip() throws Exception {
        Path real = Files.createDirectories(folder.resolve("real").resolve("runs")).resolve("0001.db");
        Files.copy(Path.of(book()).resolve("runs").resolve("0001.db"), real);
        String book = folder.resolve("real").toString();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + real); Statement statement = connection.createStatement()) {
            statement.execute("UPDATE about SET value = 'no' WHERE key = 'rehearsal'");

            assertThat(Spoken.of("findings", "1", "--logbook", book, "--with-calibration", file("good")).err())
                    .contains("of an emulated copy, and the run is real");
            statement.execute("UPDATE about SET value = replace(value, '0x40', '0x41') WHERE key = 'rig file'");
        }

        assertThat(Spoken.of("findings", "1", "--logbook", book, "--with-calibration", file("good")).err())
                .contains("the channel's chip, or what its readings are computed from, is another one now");
    }
}
