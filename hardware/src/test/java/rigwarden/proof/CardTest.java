package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.Interrupted;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunReader;
import rigwarden.pack.Chance;

/**
 * A card that is full, and a card that stalls: four cases, or as many as {@code -Drigwarden.cards} says. A full card is a
 * limit of the operating system on what one file may hold, met in the middle of a write; a stall is a lock on the file that
 * another process holds for up to two seconds. Then the process is killed. Every scan that was reported as stored is there.
 */
class CardTest {
    private static final int CASES = Integer.getInteger("rigwarden.cards", 4);

    /** The database's own library is unpacked under the same limit before anything is stored. */
    private static final int LEAST_KILOBYTES = 2000;

    @TempDir
    private Path folder;

    @TestFactory
    Stream<DynamicTest> every_scan_reported_as_stored_is_there_after_the_card_was_full_or_stalled() {
        return IntStream.rangeClosed(1, CASES).mapToObj(number -> {
            boolean full = number % 2 == 0;
            return DynamicTest.dynamicTest((full ? "full " : "stalled ") + number,
                    () -> survives(folder.resolve("card-" + number), number, full));
        });
    }

    private static void survives(Path folder, int number, boolean full) throws Exception {
        Files.createDirectories(folder);
        RandomGenerator chance = Chance.of(20, "card", "case " + number);
        Process process = new ProcessBuilder(command(folder, number, full ? LEAST_KILOBYTES + chance.nextInt(6000) : 0))
                .redirectErrorStream(true).start();
        long acknowledged = 0;
        int reports = 0;
        int wanted = 2 + chance.nextInt(20);
        boolean trouble = false;
        StringBuilder all = new StringBuilder();
        try (BufferedReader said = process.inputReader(StandardCharsets.US_ASCII)) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                all.append(line).append('\n');
                if (line.startsWith("stored ")) {
                    acknowledged = Long.parseLong(line.substring(7));
                    reports++;
                    if (!full && reports == wanted) {
                        stall(folder.resolve("runs").resolve("0001.db"), chance.nextInt(100, 2000));
                    }
                }
                trouble |= line.startsWith("trouble ");
                if (process.isAlive() && (full ? trouble : reports >= wanted + 2)) {
                    Thread.sleep(chance.nextInt(300));
                    process.toHandle().destroyForcibly();
                }
            }
        }
        process.waitFor();
        assertThat(acknowledged).as("said before it died: %s", all).isPositive();
        assertThat(trouble || !full).as("a full card is said: %s", all).isTrue();

        try (Logbook book = Logbook.open(folder, "after"); RunReader reader = RunReader.open(book.file(1))) {
            Interrupted interrupted = book.interrupted().getFirst();
            System.out.printf("%s %d: %d scans reported stored, %d there%n", full ? "full" : "stalled", number, acknowledged,
                    interrupted.lastScan().orElse(0));
            assertThat(interrupted.lastScan().orElse(0)).isGreaterThanOrEqualTo(acknowledged);
            assertThat(interrupted.fault()).as("whole").isEmpty();
            assertThat(reader.integrity()).isEmpty();
            Replayed.toTheSameOrders(book);
        }
    }

    private static List<String> command(Path folder, int number, int mostKilobytes) {
        List<String> words = new ArrayList<>();
        if (mostKilobytes > 0) {
            words.addAll(List.of("bash", "-c", "ulimit -f $1; shift; exec \"$@\"", "bash", Integer.toString(mostKilobytes)));
        }
        words.addAll(KilledRehearsal.command(folder, number));
        return words;
    }

    /** Nobody else can write to the file meanwhile. */
    private static void stall(Path file, int millis) throws SQLException, InterruptedException {
        assertThat(file).exists();
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file + "?busy_timeout=10000");
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            Thread.sleep(millis);
            statement.execute("ROLLBACK");
        }
    }
}
