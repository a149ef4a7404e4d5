package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.bus.BusFailure;
import rigwarden.calibration.Point;
import rigwarden.calibration.Taking;
import rigwarden.emulated.EmulatedRig;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredProof;
import rigwarden.loop.Pacer;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** A person calibrates a channel: from points, on an emulated copy, and what the rig file is read with afterwards. */
class CalibrateCommandTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");
    private final LocalDate today = LocalDate.now(ZoneId.systemDefault());

    @TempDir
    private Path folder;

    private Path rig = Path.of("");
    private Path meter = Path.of("");

    @BeforeEach
    void a_rig_file_and_a_meter() throws IOException {
        rig = Files.copy(RIG, folder.resolve("hut.toml"));
        meter = meter("0.05");
    }

    private Path meter(String percent) throws IOException {
        return Files.writeString(folder.resolve("meter-" + percent + ".toml"), """
                name = "bench meter"
                percent = %s
                counts = 2
                digit = 0.001
                range = 60
                calibrated = "%s"
                holds_days = 365
                """.formatted(percent, today.minusDays(100)));
    }

    private Path points(String... rows) throws IOException {
        return Files.writeString(folder.resolve("points.toml"), String.join("\n", Stream.of(rows)
                .map(row -> "[[point]]\nreads = %s\nscatter = 0.004\nscans = 50\nshown = %s\n".formatted((Object[]) row.split(" "))).toList()));
    }

    private Spoken calibrate(String... more) {
        return Spoken.of(Stream.concat(Stream.of("calibrate", rig.toString(), "current_a", "--meter", meter.toString(), "--logbook", book()),
                Stream.of(more)).toArray(String[]::new));
    }

    private String book() {
        return folder.resolve("book").toString();
    }

    private static Rig read(Path file) {
        return ((Read.Sound<Rig>) RigFile.read(file)).value();
    }

    @Test
    void points_from_a_file_give_a_calibration_beside_the_rig_file_and_a_row_in_the_ledger() throws IOException {
        Spoken said = calibrate("--points", points("5.0 5.03", "20.0 20.06", "50.0 50.12").toString());

        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        assertThat(said.out()).contains("current_a: truth = 1.0020", "until " + today.plusDays(365), "U before");
        Path file = folder.resolve("hut.current_a.calibration.toml");
        assertThat(file).exists();
        assertThat(read(rig).calibration("current_a").orElseThrow().gain()).isBetween(1.0019, 1.0021);
        try (Logbook book = Logbook.open(Path.of(book()), "now")) {
            assertThat(book.calibrations("hut bench, one cell")).containsExactly(Files.readString(file));
        }
    }

    @Test
    void a_mistyped_point_writes_nothing() throws IOException {
        Spoken said = calibrate("--points", points("5.0 5.03", "20.0 20.6", "30 30.08", "50.0 50.12").toString());

        assertThat(said.exit()).isEqualTo(Exits.REFUSED);
        assertThat(said.err()).startsWith("Point 2 shows 20.6").contains("Nothing was written.");
        assertThat(folder.resolve("hut.current_a.calibration.toml")).doesNotExist();
    }

    @Test
    void what_cannot_be_calibrated_or_asked_is_refused_in_one_sentence() {
        assertThat(Spoken.of("calibrate", rig.toString(), "cell_01_c", "--meter", meter.toString()).err())
                .contains("cell_01_c of", "allowed is one of bus_v, cell_01_v, current_a, pack_v");
        assertThat(calibrate("--shunt-ohms", "0.0005").err()).contains("--shunt-ohms and --shunt-u go together");
        assertThat(calibrate("--rehearse").err()).contains("--rehearse needs --at with two or more true values");
        assertThat(calibrate("--days", "1000").err()).contains("1…730 days");
    }

    @Test
    void a_rehearsal_writes_only_where_it_is_told_to_and_no_real_run_takes_it() throws IOException {
        Spoken bare = calibrate("--rehearse", "--at", "5,20,50");
        assertThat(bare.out()).contains("REHEARSAL of a calibration", "nothing was written");
        assertThat(folder.resolve("hut.current_a.calibration.toml")).doesNotExist();

        Path to = folder.resolve("copy");
        Spoken said = calibrate("--rehearse", "--at", "5,20,50", "--to", to.toString());
        assertThat(said.exit()).as(said.err()).isEqualTo(Exits.DONE);
        Path programme = Files.writeString(folder.resolve("rest.toml"), """
                name = "rest"
                unattended = false
                leave_empty = true
                [[step]]
                kind = "rest"
                at_least_min = 30
                at_most_min = 40
                """);
        Spoken run = Spoken.of("run", to.resolve("hut.toml").toString(), programme.toString(), "--logbook", book());
        assertThat(run.exit()).isEqualTo(Exits.REFUSED);
        assertThat(run.err()).contains("The calibration of current_a beside the rig file is of a rehearsal");

        Spoken proof = Spoken.of("prove", to.resolve("hut.toml").toString(), "--logbook", book());
        assertThat(proof.exit()).isEqualTo(Exits.REFUSED);
        assertThat(proof.err()).contains("The calibration of current_a beside the rig file is of a rehearsal");
        assertThat(proof.out()).as("nobody confirms anything in vain").doesNotContain("understood");
    }

    @Test
    void every_run_stores_a_copy_and_goes_on_only_with_the_same_one() throws IOException {
        assertThat(calibrate("--rehearse", "--at", "5,20,50", "--to", folder.toString()).exit()).isEqualTo(Exits.DONE);
        Path programme = Files.writeString(folder.resolve("once.toml"), """
                name = "half the rate, once"
                unattended = false
                leave_empty = true
                [[step]]
                kind = "discharge"
                rate_c = 0.5
                cut_off_v = 2.50
                """);
        Spoken cut = Spoken.of("rehearse", rig.toString(), programme.toString(), "--logbook", book(), "--cut-at", "0:10");
        assertThat(cut.out()).contains("The process that ran it died");
        Path file = folder.resolve("hut.current_a.calibration.toml");
        String text = Files.readString(file);
        try (RunReader reader = RunReader.open(folder.resolve("book").resolve("runs").resolve("0001.db"))) {
            assertThat(reader.about().calibrations()).containsExactly(text);
        }
        Files.delete(file);

        Spoken other = Spoken.of("continue", "1", rig.toString(), programme.toString(), "--logbook", book());
        assertThat(other.exit()).isEqualTo(Exits.REFUSED);
        assertThat(other.err()).contains("the rig file, with its calibrations: found SHA-256");
        Files.writeString(file, text);
        Spoken same = Spoken.of("continue", "1", rig.toString(), programme.toString(), "--logbook", book());
        assertThat(same.exit()).as(same.err() + same.out()).isEqualTo(Exits.DONE);
        assertThat(Replays.all(Path.of(book()))).isPositive();
    }

    @Test
    void a_new_calibration_ends_a_proof() throws IOException {
        Path programme = Path.of("..", "hardware", "rigs", "one-cell-night.toml");
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        Inputs proved = Inputs.read(rig, programme);
        try (Logbook ledger = Logbook.open(Path.of(book()), now)) {
            ledger.enter(Stream.of("loop emergency_stop", "loop thermal_cutout", "loop cell_window", "heartbeat line low", "heartbeat line high", StoredProof.WHOLE)
                    .map(kind -> new StoredProof(proved.rig().name(), OptionalInt.empty(), kind, true, now, "", proved.proved(List.of()), "x", false)).toList());
        }

        calibrate("--points", points("5.0 5.0105", "20.0 20.041", "50.0 50.102").toString());

        Spoken run = Spoken.of("run", rig.toString(), programme.toString(), "--logbook", book());
        assertThat(run.exit()).isEqualTo(Exits.REFUSED);
        assertThat(run.err()).contains("is not proved: it was calibrated since the proof of " + now).doesNotContain("changed since", "never");
    }

    @Test
    void a_person_types_what_the_meter_shows_and_may_drop_a_point() throws BusFailure, IOException {
        Rig bare = read(rig);
        EmulatedRig emulated = new EmulatedRig(bare, 3);
        Pacer pacer = Pacer.ofScan(emulated.clock(), bare.scanNanos());
        Taking taking = new Taking(bare, "cell_01_v", () -> {
            emulated.await(pacer);
            emulated.catchUp();
            return emulated.rigBench().take();
        });
        emulated.hold("cell_01_v", 3.0);
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        AskedPoints asked = new AskedPoints(taking, 20, "V", "V",
                new BufferedReader(new StringReader("3,001\n3.001\n\n3.002\nno\n3.003 V\n-3.004\n\n\n")),
                new PrintStream(said, true, StandardCharsets.UTF_8));

        List<Point> points = asked.all();

        assertThat(points).extracting(Point::shown).containsExactly(3.001, -3.004);
        assertThat(points.getFirst().reads()).isBetween(2.98, 3.02);
        assertThat(points.getFirst().scans()).isEqualTo(20);
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("Point 2.").satisfies(words ->
                assertThat(words.split(Typed.HOW, -1)).as("a comma and a unit").hasSize(3));
    }

    @Test
    void a_meter_that_gives_nothing_back_is_said_to() throws IOException {
        meter = meter("1");

        Spoken said = calibrate("--points", points("5.0 5.03", "20.0 20.06", "50.0 50.12").toString());

        assertThat(said.out()).contains("This meter gives nothing back");
    }
}
