package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.Interrupted;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunReader;
import rigwarden.pack.Chance;

/**
 * A recorded run is killed (SIGKILL) twelve times, or as often as {@code -Drigwarden.kills} says: within its first stored second, in the closing sequence, and anywhere
 * while it commits ten times a second and makes a checkpoint five times a second. Every scan that was reported as stored is
 * there, the file is whole, and the next start says what was interrupted.
 */
class CrashTest {
    @TempDir
    private Path folder;

    @TestFactory
    Stream<DynamicTest> every_scan_reported_as_stored_survives_a_kill_and_the_next_start_says_what_was_interrupted() {
        return IntStream.rangeClosed(1, Integer.getInteger("rigwarden.kills", 12)).mapToObj(kill ->
                DynamicTest.dynamicTest("kill " + kill, () -> survives(folder.resolve("kill-" + kill), kill)));
    }

    private static void survives(Path folder, int kill) throws Exception {
        Files.createDirectories(folder);
        RandomGenerator chance = Chance.of(20, "crash", "kill " + kill);
        Process process = new ProcessBuilder(KilledRehearsal.command(folder, kill)).redirectErrorStream(true).start();
        long acknowledged = 0;
        int reports = 0;
        int wanted = kill <= 4 ? 1 : 1 + chance.nextInt(60);
        boolean atClosing = kill > 4 && kill <= 8;
        StringBuilder all = new StringBuilder();
        try (BufferedReader said = process.inputReader(StandardCharsets.US_ASCII)) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                all.append(line).append('\n');
                if (line.startsWith("stored ")) {
                    acknowledged = Long.parseLong(line.substring(7));
                    reports++;
                }
                boolean now = atClosing ? line.equals("closing") : reports >= wanted;
                if (now && process.isAlive()) {
                    Thread.sleep(chance.nextInt(atClosing ? 300 : 30));
                    process.toHandle().destroyForcibly();
                }
            }
        }
        process.waitFor();
        assertThat(acknowledged + (atClosing ? 1 : 0)).as("said before it died: %s", all).isPositive();

        try (Logbook book = Logbook.open(folder, "after")) {
            assertThat(book.interrupted()).hasSize(1);
            Interrupted interrupted = book.interrupted().getFirst();
            assertThat(interrupted.fault()).as("whole").isEmpty();
            assertThat(interrupted.lastScan().orElse(0)).isGreaterThanOrEqualTo(acknowledged);
            assertThat(interrupted.words()).isNotBlank();
            assertThat(book.runs().getFirst().outcome()).isEqualTo(Outcome.INTERRUPTED);
            System.out.printf("kill %d: %d scans reported stored, %d there. %s%n", kill, acknowledged,
                    interrupted.lastScan().orElse(0), interrupted.words());
            try (RunReader reader = RunReader.open(book.file(1))) {
                assertThat(reader.integrity()).isEmpty();
            }
            Replayed.toTheSameOrders(book);
        }
    }
}
