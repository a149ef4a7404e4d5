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
 * A card that is full, and a card that stalls: four cases, or as many as {@code -Drigwarden.cards} says, of four kinds. Full is
 * a file system of a few megabytes without room, or a limit of the operating system on what one file may hold, either met in
 * the middle of a write; a stall is a lock on the file that another process holds for up to two seconds. The process is killed
 * after that, or within the stall. Every scan that was reported as stored is there.
 */
class CardTest {
    private static final int CASES = Integer.getInteger("rigwarden.cards", 4);

    private enum Kind {
        STALLED,
        FILE_LIMIT,
        KILLED_IN_STALL,
        FULL;

        boolean full() {
            return this == FILE_LIMIT || this == FULL;
        }
    }

    /** The database's own library is unpacked under the same limit before anything is stored. */
    private static final int LEAST_KILOBYTES = 2000;

    @TempDir
    private Path folder;

    @TestFactory
    Stream<DynamicTest> every_scan_reported_as_stored_is_there_after_the_card_was_full_or_stalled() {
        return IntStream.rangeClosed(1, CASES).mapToObj(number -> {
            Kind kind = Kind.values()[(number - 1) % Kind.values().length];
            return DynamicTest.dynamicTest(kind + " " + number, () -> onCard(folder.resolve("card-" + number), number, kind));
        });
    }

    /** Where nobody may mount a file system the limit on one file stands for it, and that is said. */
    private static void onCard(Path folder, int number, Kind kind) throws Exception {
        Files.createDirectories(folder);
        RandomGenerator chance = Chance.of(20, "card", "case " + number);
        if (kind == Kind.FULL && mount(folder, "size=" + (LEAST_KILOBYTES + chance.nextInt(6000)) + "k")) {
            try {
                survives(folder, number, kind, chance);
            } finally {
                new ProcessBuilder("umount", "--lazy", folder.toString()).inheritIO().start().waitFor();
            }
        } else {
            if (kind == Kind.FULL) {
                System.out.println("CARD: no file system may be mounted here; a limit on one file stands for a full one in case " + number);
            }
            survives(folder, number, kind == Kind.FULL ? Kind.FILE_LIMIT : kind, chance);
        }
    }

    private static boolean mount(Path folder, String options) throws Exception {
        return new ProcessBuilder("mount", "-t", "tmpfs", "-o", options, "tmpfs", folder.toString()).start().waitFor() == 0;
    }

    private static void survives(Path folder, int number, Kind kind, RandomGenerator chance) throws Exception {
        Process process = new ProcessBuilder(command(folder, number, kind == Kind.FILE_LIMIT ? LEAST_KILOBYTES + chance.nextInt(6000) : 0))
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
                    if (!kind.full() && reports == wanted) {
                        stall(folder.resolve("runs").resolve("0001.db"), chance.nextInt(100, 2000), kind == Kind.KILLED_IN_STALL ? process.toHandle()::destroyForcibly : () -> { });
                    }
                }
                trouble |= line.startsWith("trouble ");
                if (process.isAlive() && (kind.full() ? trouble : reports >= wanted + 2)) {
                    Thread.sleep(chance.nextInt(300));
                    process.toHandle().destroyForcibly();
                }
            }
        }
        process.waitFor();
        assertThat(acknowledged).as("said before it died: %s", all).isPositive();
        assertThat(trouble || !kind.full()).as("a full card is said: %s", all).isTrue();
        if (kind == Kind.FULL) {
            assertThat(mount(folder, "remount,size=64m")).as("a person makes room").isTrue();
        }

        try (Logbook book = Logbook.open(folder, "after"); RunReader reader = RunReader.open(book.file(1))) {
            Interrupted interrupted = book.interrupted().getFirst();
            System.out.printf("%s %d: %d scans reported stored, %d there%n", kind, number, acknowledged,
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

    /** Nobody else can write to the file meanwhile; in the middle of it something is done. */
    private static void stall(Path file, int millis, Runnable within) throws SQLException, InterruptedException {
        assertThat(file).exists();
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file + "?busy_timeout=10000");
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            Thread.sleep(millis / 2);
            within.run();
            Thread.sleep(millis / 2);
            statement.execute("ROLLBACK");
        }
    }
}
