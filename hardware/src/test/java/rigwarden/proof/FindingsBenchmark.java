package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.emulated.Rehearsal;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.paper.RunFindings;
import rigwarden.rig.Rig;

/**
 * All findings of the pack's night beside one bare pass over the same rows and columns in the same process, once over the whole
 * night and once over its first half; then in a process whose whole heap is 64 MB. Not part of the default run:
 * {@code -Dtest=FindingsBenchmark}.
 */
class FindingsBenchmark {
    private static final int ROUNDS = 5;
    private static final double MOST_TIMES = 2;
    /** A cost that grew with the square of the rows would double here. */
    private static final double ROW_TIMES = 1.4;
    private static final String HEAP = "-Xmx64m";

    @TempDir
    private Path folder;

    @Test
    void all_findings_of_a_night_cost_at_most_twice_a_bare_pass_and_grow_with_its_rows_alone() throws Exception {
        Path night = stored(folder.resolve("night.db"));
        Path half = half(night, folder.resolve("half.db"));

        double whole = ratio("the whole night", night);
        double first = ratio("its first half", half);
        assertThat(whole / first).as("a row costs the same in a night twice as long, beside a bare pass").isBetween(1 / ROW_TIMES, ROW_TIMES);
        assertThat(whole).as("findings ÷ bare pass, best of " + ROUNDS).isLessThanOrEqualTo(MOST_TIMES);

        Process small = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), HEAP, "-XX:+UseSerialGC",
                "--enable-native-access=ALL-UNNAMED", "-cp", System.getProperty("java.class.path"), FindingsBenchmark.class.getName(), night.toString())
                .redirectErrorStream(true).start();
        String said = new String(small.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        System.out.println("with " + HEAP + ": " + said.strip());
        assertThat(small.waitFor()).as(said).isZero();
    }

    /** The same findings in a process of their own. */
    public static void main(String[] args) {
        RunFindings found = RunFindings.read(Path.of(args[0])).orElseThrow();
        System.out.println(found.findings().size() + " findings of " + found.rows() + " rows");
    }

    private static double ratio(String of, Path file) throws SQLException {
        double best = Double.MAX_VALUE;
        double findings = Double.MAX_VALUE;
        double bare = Double.MAX_VALUE;
        long rows = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long began = System.nanoTime();
            rows = RunFindings.read(file).orElseThrow().rows();
            long between = System.nanoTime();
            bare(file);
            findings = Math.min(findings, (between - began) * 1e-9);
            bare = Math.min(bare, (System.nanoTime() - between) * 1e-9);
            best = findings / bare;
        }
        System.out.printf(Locale.ROOT, "%s: %d rows; all findings %.2f s, %.2f s for a million rows; bare pass %.2f s, ratio %.2f%n", of, rows, findings,
                findings * 1e6 / rows, bare, best);
        return best;
    }

    /** Every column of every row, as a number. */
    private static void bare(Path file) throws SQLException {
        long sum = 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT * FROM scan ORDER BY number")) {
            int columns = rows.getMetaData().getColumnCount();
            while (rows.next()) {
                for (int i = 1; i <= columns; i++) {
                    sum += rows.getLong(i);
                }
            }
        }
        assertThat(sum).isNotZero();
    }

    private static Path stored(Path file) throws Exception {
        Rig rig = Bench.packRig();
        RunAbout about = new RunAbout(Files.readString(Bench.RIGS.resolve("eight-cells.toml")), Files.readString(Bench.RIGS.resolve("eight-cells-night.toml")),
                Map.of(), "emulated", 1, true, "rehearsal", 0);
        try (RunWriter writer = RunWriter.create(file, about, rig.channels(), RunSettings.USUAL.withBallast(0), _ -> { })) {
            Rehearsal rehearsal = new Rehearsal(rig, Bench.packNight(), 1, List.of(), writer);
            while (!rehearsal.over()) {
                rehearsal.scan();
                while (writer.fill() > 0.5) {
                    LockSupport.parkNanos(200_000);
                }
            }
        }
        return file;
    }

    private static Path half(Path night, Path file) throws Exception {
        long last;
        try (RunReader reader = RunReader.open(night)) {
            last = reader.lastScan().orElseThrow();
        }
        Files.copy(night, file);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file); Statement statement = connection.createStatement()) {
            for (String table : List.of("scan WHERE number", "event WHERE scan", "orders WHERE scan", "gap WHERE scan")) {
                statement.executeUpdate("DELETE FROM " + table + " > " + last / 2);
            }
            statement.execute("VACUUM");
        }
        return file;
    }
}
