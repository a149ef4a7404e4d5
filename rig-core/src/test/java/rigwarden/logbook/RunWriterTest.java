package rigwarden.logbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

@Timeout(60)
class RunWriterTest {
    private static final RunSettings SETTINGS = RunSettings.USUAL.withBallast(0);
    private static final RunSettings NEVER_BY_TIME =
            new RunSettings(8000, 8000, TimeUnit.HOURS.toNanos(1), 0, TimeUnit.SECONDS.toNanos(1), 0);

    @TempDir
    Path dir;

    private Path file;
    private final AnyRun run = new AnyRun(11, 27, 0.02, 3_000_000);

    @BeforeEach
    void nameTheFile() {
        file = dir.resolve("0001.db");
    }

    @Test
    void whatAPersonDidBesideTheRunIsAnEventOfTheScanStoredLast() {
        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS, _ -> { })) {
            writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of());
            writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of());
            while (writer.storedScan() < 2) {
                Thread.onSpinWait();
            }
            assertThat(writer.note("confirmed", "an operator read the card")).isTrue();
            assertThat(writer.note(StoredEvent.CLOCK_SET, "by an hour", 3600)).isTrue();
        }

        try (RunReader reader = RunReader.open(file)) {
            assertThat(reader.events()).filteredOn(e -> e.kind().equals("confirmed")).singleElement().satisfies(e -> {
                assertThat(e.scan()).isEqualTo(2);
                assertThat(e.words()).isEqualTo("an operator read the card");
                assertThat(e.value()).isEmpty();
            });
            assertThat(reader.events()).filteredOn(e -> e.kind().equals(StoredEvent.CLOCK_SET)).singleElement().extracting(StoredEvent::value)
                    .isEqualTo(OptionalDouble.of(3600));
        }
    }

    @Test
    void whatBelongsToAScanThatWasWrittenAlreadyComesBackWithThatScan() {
        Scan told = run.scan();
        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS, _ -> { })) {
            writer.offer(told, Inbox.EMPTY, Orders.OFF, List.of());
            for (int more = 0; more < 50; more++) {
                writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of());
            }
            while (writer.storedScan() < 51) {
                Thread.onSpinWait();
            }
            assertThat(writer.note("confirmed", "later")).isTrue();
            assertThat(writer.note("spot", "cell 1, + stud", told)).isTrue();
        }

        try (RunReader reader = RunReader.open(file); Cycles cycles = reader.cycles()) {
            assertThat(cycles.next().events()).extracting(StoredEvent::words).containsExactly("cell 1, + stud");
            assertThat(reader.events()).extracting(StoredEvent::scan).containsExactly(told.number(), 51L);
        }
    }

    @Test
    void everyCommitIsSyncedToTheCard() throws SQLException {
        try (RunFile made = RunFile.create(file, AnyRun.ABOUT, run.channels(), 0)) {
            assertThat(made.synchronous()).isEqualTo(2);
        }
    }

    @Test
    void aPragmaThatDoesNotReadBackIsRefused() throws SQLException {
        try (Connection connection = Sqlite.write(file)) {
            assertThatThrownBy(() -> Sqlite.insist(connection, "synchronous", "NORMAL", "2"))
                    .isInstanceOf(SQLException.class).hasMessageContaining("reads back 1");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "INSERT INTO scan (number, nanos, fresh, c00) VALUES (1, 1, 0, 'warm')",
        "INSERT INTO orders VALUES (1, 'path', 'CHARGE', 0, 'CURRENT', 'ten', 14.6)",
        "INSERT INTO gap VALUES (1, 'first', NULL, NULL)",
        "INSERT INTO event (scan, nanos, kind, words, value) VALUES (1, 1, 'a', 'b', 'c')"})
    void aValueOfTheWrongTypeIsRefused(String insert) throws SQLException {
        RunFile.create(file, AnyRun.ABOUT, run.channels(), 0).close();

        try (Connection connection = Sqlite.write(file)) {
            assertThatThrownBy(() -> Sqlite.run(connection, insert)).hasMessageContaining("cannot store TEXT value");
        }
    }

    @Test
    void anEventOfWeightIsCommittedAtOnceAndAWarningWaits() throws InterruptedException {
        LinkedBlockingQueue<Long> stored = new LinkedBlockingQueue<>();
        List<Event> events = run.everyEvent();

        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), NEVER_BY_TIME, stored::add)) {
            writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of(events.get(4)));
            writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of(events.get(5)));

            assertThat(stored.poll(20, TimeUnit.SECONDS)).isEqualTo(2);
            assertThat(writer.storedScan()).isEqualTo(2);
            assertThat(writer.lagNanos()).isZero();
        }
    }

    @Test
    void aFullQueueCountsWhatItLosesAndNeverBlocks() {
        RunFile made = RunFile.create(file, AnyRun.ABOUT, run.channels(), 0);
        RunWriter writer = new RunWriter(made, 27, SETTINGS.withQueue(8, 8), _ -> {});

        for (int scan = 1; scan <= 100; scan++) {
            writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of());
        }

        assertThat(writer.lostRows()).isEqualTo(92);
        assertThat(writer.fill()).isEqualTo(1.0);
        assertThat(writer.lagNanos()).isPositive();
        writer.start().close();
        assertThat(writer.storedScan()).isEqualTo(8);
        assertThat(writer.fill()).isZero();
    }

    @Test
    void aRowAfterTheEndIsLostAndCounted() {
        RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS, _ -> {});
        writer.close();

        writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of());

        assertThat(writer.lostRows()).isEqualTo(1);
    }

    @Test
    void aFullDiskLosesNothingOnceThereIsSpaceAgain() throws SQLException {
        RunFile made = RunFile.create(file, AnyRun.ABOUT, run.channels(), 4096);
        made.limitPages(60);
        RunWriter writer = new RunWriter(made, 27, SETTINGS.withQueue(8000, 100), _ -> {}).start();
        for (int scan = 1; scan <= 3000; scan++) {
            writer.offer(run.scan(), Inbox.EMPTY, run.orders(), List.of());
        }
        while (writer.trouble().isEmpty() || Files.exists(RunFile.ballastOf(file))) {
            Thread.onSpinWait();
        }
        long storedWhenFull = writer.storedScan();

        assertThat(writer.trouble().get()).contains("full");
        assertThat(storedWhenFull).isLessThan(3000);
        assertThat(writer.lagNanos()).isPositive();
        assertThat(writer.note("confirmed", "while the disk was full")).isTrue();
        made.limitPages(1_000_000);
        writer.close();

        try (RunReader reader = RunReader.open(file)) {
            assertThat(reader.events()).extracting(StoredEvent::words).containsExactly("while the disk was full");
        }
        assertThat(writer.trouble()).isEmpty();
        assertThat(writer.lostRows()).isZero();
        assertThatEveryScanIsAsOffered(file, new AnyRun(11, 27, 0.02, 3_000_000), 3000, true);
    }

    @Test
    void aDiskThatStaysFullIsSaidAndLeavesWhatWasStored() throws SQLException {
        RunFile made = RunFile.create(file, AnyRun.ABOUT, run.channels(), 0);
        made.limitPages(60);
        RunSettings settings = new RunSettings(8000, 100, 0, 0, 0, 0);
        RunWriter writer = new RunWriter(made, 27, settings, _ -> {});
        for (int scan = 1; scan <= 3000; scan++) {
            writer.offer(run.scan(), Inbox.EMPTY, run.orders(), List.of());
        }

        writer.start().close();

        assertThat(writer.trouble().get()).contains("full");
        assertThat(writer.lostRows()).isEqualTo(3000 - writer.storedScan());
        assertThatEveryScanIsAsOffered(file, new AnyRun(11, 27, 0.02, 3_000_000), writer.storedScan(), true);
    }

    @Test
    void aCopyTakenInTheMiddleOfATransactionHoldsWhatWasCommitted() throws Exception {
        Path copy = Files.createDirectory(dir.resolve("copy")).resolve("0001.db");
        Path log = dir.resolve("0001.db-wal");
        long committedBytes = 0;
        try (RunFile made = RunFile.create(file, AnyRun.ABOUT, run.channels(), 0)) {
            RunRows rows = new RunRows(made, 27);
            for (int scan = 1; scan <= 20_000; scan++) {
                if (scan == 1 || scan == 1001) {
                    made.begin();
                }
                rows.put(new Row(run.scan(), Inbox.EMPTY, run.orders(), List.of(), 0));
                if (scan == 1000) {
                    made.commit();
                    committedBytes = Files.size(log);
                }
            }
            Files.copy(file, copy);
            Files.copy(log, copy.resolveSibling("0001.db-wal"));
        }

        // More than the page cache was written, so that rows without a commit are in the copied log.
        assertThat(Files.size(copy.resolveSibling("0001.db-wal"))).isGreaterThan(committedBytes + 1_000_000);
        assertThatEveryScanIsAsOffered(copy, new AnyRun(11, 27, 0.02, 3_000_000), 1000, true);
    }

    @ParameterizedTest
    @ValueSource(ints = {200, 3000})
    void aKilledProcessLeavesEveryScanThatItSaidWasStored(int atLeast) throws Exception {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m", "--enable-native-access=ALL-UNNAMED", "-cp", System.getProperty("java.class.path"),
                "rigwarden.logbook.WriterForKilling", file.toString(), "21")
                .redirectError(ProcessBuilder.Redirect.DISCARD).start();
        long stored = 0;
        try (BufferedReader said = process.inputReader()) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                stored = Long.parseLong(line);
                if (stored >= atLeast) {
                    break;
                }
            }
        } finally {
            process.destroyForcibly().waitFor();
        }

        assertThat(stored).isGreaterThanOrEqualTo(atLeast);
        assertThatEveryScanIsAsOffered(file, new AnyRun(21, 27, 0.02, 3_000_000), stored, false);
    }

    /** The file is whole and its scans are the first ones of this run: at least so many, or just so many. */
    private static void assertThatEveryScanIsAsOffered(Path file, AnyRun same, long scans, boolean just) {
        try (RunReader reader = RunReader.open(file); Cycles cycles = reader.cycles()) {
            assertThat(reader.integrity()).isEmpty();
            long last = 0;
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                assertThat(cycle.scan()).isEqualTo(same.scan());
                assertThat(cycle.orders()).isEqualTo(StoredOrders.of(same.orders()));
                last = cycle.scan().number();
            }
            assertThat(last).isGreaterThanOrEqualTo(scans);
            assertThat(just && last != scans).isFalse();
        }
    }
}
