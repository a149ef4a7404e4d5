package rigwarden.logbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.run.Account;
import rigwarden.run.Bracket;
import rigwarden.run.Event;
import rigwarden.run.PickUp;
import rigwarden.warden.Closing;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.OrdersForTests;
import rigwarden.warden.Swing;
import rigwarden.warden.Way;

@Timeout(60)
class LogbookTest {
    private static final String LABEL = "2026-01-02T03:04:05Z";

    @TempDir
    Path dir;

    private final AnyRun run = new AnyRun(31, 9, 0.02, 1000);

    @Test
    void aRunIsEnteredWithTheHashOfItsClosedFile() throws IOException {
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            finishOne(logbook);

            LedgerRun entry = logbook.runs().getFirst();
            assertThat(entry.number()).isEqualTo(1);
            assertThat(entry.file()).isEqualTo("0001.db");
            assertThat(entry.rig()).isEqualTo("bench");
            assertThat(entry.outcome()).isEqualTo(Outcome.FINISHED);
            assertThat(entry.words()).isEqualTo("all steps done");
            assertThat(entry.sha256()).contains(Recovery.sha256(logbook.file(1)));
            Logbook.Begun next = begin(logbook, 1000, _ -> {});
            next.writer().close();
            assertThat(next.number()).isEqualTo(2);
        }
    }

    @Test
    void aLedgerFromBeforeProofsNamedCalibrationsAndCellsKeepsItsProofsAndTakesNewOnes() throws SQLException {
        StoredProof before = new StoredProof("bench", OptionalInt.empty(), StoredProof.WHOLE, true, LABEL, "", new StoredProof.Of("aa", "", ""), "x", false);
        StoredProof after = new StoredProof("bench", OptionalInt.empty(), StoredProof.WHOLE, true, LABEL, "", new StoredProof.Of("aa", "bb", "A7, A9"), "x", false);
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            logbook.enter(List.of(before));
        }
        try (Connection connection = Sqlite.write(dir.resolve("ledger.db"))) {
            Sqlite.run(connection, "ALTER TABLE proof DROP COLUMN calibration_hash");
            Sqlite.run(connection, "ALTER TABLE proof DROP COLUMN cells");
        }

        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            logbook.enter(List.of(after));
            assertThat(logbook.proofs()).containsExactly(before, after);
        }
    }

    @Test
    void theHashIsSha256() throws IOException {
        Path file = Files.writeString(dir.resolve("abc"), "abc");

        // published (FIPS 180-2, appendix B.1, the message "abc")
        assertThat(Recovery.sha256(file)).isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void aRunOfADeadProcessIsFoundClosedAndMarkedInterrupted() throws Exception {
        Path copy = dir.resolve("copy");
        LinkedBlockingQueue<Long> stored = new LinkedBlockingQueue<>();
        Orders charge = OrdersForTests.path(1, Way.CHARGE, Closing.CURRENT, 20, 14.6);
        try (Logbook logbook = Logbook.open(dir.resolve("live"), LABEL)) {
            try (RunWriter writer = begin(logbook, 1000, stored::add).writer()) {
                writer.offer(run.scan(), Inbox.EMPTY, charge, List.of(new Event.StepBegun(4, "charge")));
                assertThat(stored.poll(20, TimeUnit.SECONDS)).isEqualTo(1);
                copyFolder(dir.resolve("live"), copy);
            }
        }

        try (Logbook logbook = Logbook.open(copy, LABEL)) {
            Interrupted found = logbook.interrupted().getFirst();
            assertThat(found.number()).isEqualTo(1);
            assertThat(found.lastScan()).isEqualTo(OptionalLong.of(1));
            assertThat(found.orders()).isEqualTo(StoredOrders.of(charge));
            assertThat(found.step()).isEqualTo(OptionalInt.of(4));
            assertThat(found.fault()).isEmpty();
            assertThat(logbook.said()).containsExactly("Run 1 was interrupted in step 4 after scan 1; orders in force "
                    + "were: charge, current, 20.00 A, 14.600 V.");
            LedgerRun entry = logbook.runs().getFirst();
            assertThat(entry.outcome()).isEqualTo(Outcome.INTERRUPTED);
            assertThat(entry.sha256()).contains(Recovery.sha256(logbook.file(1)));
        }
        assertThat(copy.resolve("runs").toFile().list()).containsExactly("0001.db");
        try (Logbook again = Logbook.open(copy, LABEL)) {
            assertThat(again.interrupted()).isEmpty();
            assertThat(again.said()).isEmpty();
        }
    }

    @Test
    void aDamagedRunFileIsSaidAndLeftAsItIs() throws IOException {
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            begin(logbook, 1000, _ -> {}).writer().close();
        }
        Path file = dir.resolve("runs").resolve("0001.db");
        Files.delete(file);
        Files.writeString(file, "no database at all, whatever its name may say");

        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            assertThat(logbook.interrupted().getFirst().fault().get()).contains("it is no run file, nor a ledger");
            assertThat(logbook.runs().getFirst().outcome()).isEqualTo(Outcome.INTERRUPTED);
            assertThat(logbook.runs().getFirst().sha256()).isEmpty();
        }
        assertThat(file).hasContent("no database at all, whatever its name may say");
    }

    @Test
    void aLedgerThatDoesNotOpenIsMovedAsideAndTheRunsAreListedAgain() throws IOException {
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            finishOne(logbook);
        }
        Files.writeString(dir.resolve("ledger.db"), "spilt coffee, long enough to be no header of a database file");

        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            assertThat(logbook.said().getFirst()).contains("moved aside to ledger-aside-20260102T030405Z.db");
            assertThat(dir.resolve("ledger-aside-20260102T030405Z.db")).content().startsWith("spilt coffee");
            assertThat(logbook.runs()).singleElement().satisfies(entry -> {
                assertThat(entry.number()).isEqualTo(1);
                assertThat(entry.outcome()).isEqualTo(Outcome.FINISHED);
                assertThat(entry.started()).isEqualTo(AnyRun.ABOUT.started());
            });
            Logbook.Begun next = begin(logbook, 1000, _ -> {});
            next.writer().close();
            assertThat(next.number()).isEqualTo(2);
        }
    }

    @Test
    void aRunIsRefusedWhenTwiceItsSizeIsNotFree() {
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            long free = dir.toFile().getUsableSpace();

            assertThatThrownBy(() -> begin(logbook, free / 2 + (1L << 34), _ -> {}))
                    .isInstanceOf(LogbookException.class).hasMessageContaining("twice that");
            assertThat(logbook.runs()).isEmpty();
            assertThat(dir.resolve("runs")).isEmptyDirectory();
        }
    }

    @Test
    void aSecondUserOfTheFolderIsRefused() {
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            assertThatThrownBy(() -> Logbook.open(dir, LABEL)).isInstanceOf(LogbookException.class)
                    .hasMessageContaining("in use by another process");
            assertThat(logbook.runs()).isEmpty();
        }
        Logbook.open(dir, LABEL).close();
    }

    private void finishOne(Logbook logbook) {
        Logbook.Begun begun = begin(logbook, 1000, _ -> {});
        begun.writer().offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of(run.everyEvent().getLast()));
        begun.writer().close();
        logbook.finish(begun.number(), Outcome.FINISHED, "all steps done");
    }

    @Test
    void oneRunIsContinuedOnceAndNotAfterItWasAbandoned() throws Exception {
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            for (int number = 1; number <= 2; number++) {
                begin(logbook, 1000, _ -> { }).writer().close();
                logbook.finish(number, Outcome.TRIPPED, "a trip");
            }
            goOn(logbook, 1).writer().close();
            logbook.abandon(2, "the fuse was loose");

            assertThatThrownBy(() -> goOn(logbook, 1)).isInstanceOf(LogbookException.class).hasMessageContaining("continued as run 0003");
            assertThatThrownBy(() -> goOn(logbook, 2)).isInstanceOf(LogbookException.class).hasMessageContaining("the fuse was loose");
            assertThat(logbook.runs()).hasSize(3);
        }
    }

    @Test
    void whereARunGoesOnStandsInItsFileToTheLastDigit() {
        try (Logbook logbook = Logbook.open(dir, LABEL)) {
            begin(logbook, 1000, _ -> { }).writer().close();
            logbook.finish(1, Outcome.TRIPPED, "a trip");
            Logbook.Begun begun = goOn(logbook, 1);
            begun.writer().close();

            try (RunReader reader = RunReader.open(logbook.file(begun.number()))) {
                assertThat(reader.about().from()).contains(from(1));
            }
        }
    }

    private static PickUp from(int run) {
        return new PickUp(run, 1, 0, new Account(1, 2, 3, 4, 5, 6), -1, 0, List.of(0.25), 0, 0,
                List.of(new Bracket(3.1, 3.4)), new Swing(-1.5, Optional.of(2.5), 21, Optional.empty(), Optional.of(1e-3)));
    }

    private Logbook.Begun goOn(Logbook logbook, int with) {
        RunAbout about = AnyRun.ABOUT;
        return logbook.begin(new RunAbout(about.rigText(), about.programmeText(), about.versions(), about.boot(), about.seed(),
                about.rehearsal(), about.started(), about.originNanos(), List.of(), Optional.of(from(with))), "bench", "a night",
                run.channels(), 1000, RunSettings.USUAL.withBallast(0), _ -> { });
    }

    private Logbook.Begun begin(Logbook logbook, long estimateBytes, LongConsumer onStored) {
        return logbook.begin(AnyRun.ABOUT, "bench", "a night", run.channels(), estimateBytes,
                RunSettings.USUAL.withBallast(0), onStored);
    }

    private static void copyFolder(Path from, Path to) throws IOException {
        Files.createDirectories(to.resolve("runs"));
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.filter(Files::isRegularFile).filter(f -> !f.toString().endsWith("-shm")).toList()) {
                Files.copy(file, to.resolve(from.relativize(file)));
            }
        }
    }
}
