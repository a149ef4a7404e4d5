package rigwarden.logbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

class RunRoundTripTest {
    private static final RunSettings SETTINGS = RunSettings.USUAL.withBallast(0);

    @TempDir
    Path dir;

    @ParameterizedTest
    @CsvSource({"1, 1, 0.0, 0", "2, 27, 0.0, 0", "3, 27, 0.1, 0", "4, 27, 0.02, 3000000", "5, 64, 0.4, 3000000"})
    void everyCycleComesBackExactlyAsItWasOffered(long seed, int channels, double failing, long jitterNanos) {
        AnyRun run = new AnyRun(seed, channels, failing, jitterNanos);
        Path file = dir.resolve("0001.db");
        List<Cycle> offered = new ArrayList<>();

        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS, _ -> {})) {
            for (int cycle = 0; cycle < 2000; cycle++) {
                offered.add(offer(writer, run));
            }
        }

        try (RunReader reader = RunReader.open(file); Cycles cycles = reader.cycles()) {
            assertThat(reader.about()).isEqualTo(AnyRun.ABOUT);
            assertThat(reader.channels()).isEqualTo(run.channels());
            assertThat(reader.lastScan()).isEqualTo(OptionalLong.of(2000));
            assertThat(reader.integrity()).isEmpty();
            for (Cycle cycle : offered) {
                assertThat(cycles.next()).isEqualTo(cycle);
            }
            assertThat(cycles.hasNext()).isFalse();
        }
    }

    @Test
    void timesAreLeftOutWhileTheyStayTheSame() throws SQLException {
        AnyRun run = new AnyRun(6, 5, 0, 0);
        Path file = dir.resolve("0001.db");

        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS, _ -> {})) {
            for (int cycle = 0; cycle < 30; cycle++) {
                offer(writer, run);
            }
        }

        try (Connection connection = Sqlite.read(file)) {
            assertThat(Sqlite.ask(connection, "SELECT group_concat(number) FROM scan WHERE taken NOT NULL"))
                    .isEqualTo("1");
            assertThat(Sqlite.ask(connection, "SELECT group_concat(fresh) FROM scan WHERE number IN (1, 2, 11)"))
                    .isEqualTo("31,27,31");
        }
    }

    @Test
    void aClosedFileStandsAloneAndIsReadOnly() throws Exception {
        AnyRun run = new AnyRun(7, 5, 0.1, 1000);
        Path file = dir.resolve("0001.db");

        RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS.withBallast(4096), _ -> {});
        assertThat(RunFile.ballastOf(file)).hasSize(4096);
        offer(writer, run);
        writer.close();

        assertThat(writer.trouble()).isEmpty();
        assertThat(writer.storedScan()).isEqualTo(1);
        try (var files = Files.list(dir)) {
            assertThat(files).containsExactly(file);
        }
        assertThat(Files.getPosixFilePermissions(file).toString()).doesNotContain("WRITE");
        try (Connection connection = Sqlite.read(file)) {
            assertThat(Sqlite.ask(connection, "PRAGMA journal_mode")).isEqualTo("delete");
        }
    }

    @Test
    void thePlainViewSpeaksInUnits() throws SQLException {
        AnyRun run = new AnyRun(8, 3, 0, 0);
        Path file = dir.resolve("0001.db");
        Scan scan = run.scan();

        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS, _ -> {})) {
            writer.offer(scan, Inbox.EMPTY, Orders.OFF, List.of());
        }

        // 105 ms is the scan's time, 1 ms the origin's.
        String expected = String.format(Locale.ROOT, "1 0.1040 %.6f", ((Reading.Valid) scan.readings().get(1)).value());
        try (Connection connection = Sqlite.read(file)) {
            assertThat(Sqlite.ask(connection,
                    "SELECT printf('%d %.4f %.6f', number, elapsed_s, cell_1_v) FROM plain")).isEqualTo(expected);
        }
    }

    @Test
    void theStepViewPairsBeginningAndEnd() throws SQLException {
        AnyRun run = new AnyRun(9, 3, 0, 0);
        Path file = dir.resolve("0001.db");

        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, run.channels(), SETTINGS, _ -> {})) {
            writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, run.everyEvent());
            writer.offer(run.scan(), Inbox.EMPTY, Orders.OFF, List.of(new Event.StepBegun(3, "rest")));
        }

        try (Connection connection = Sqlite.read(file)) {
            assertThat(Sqlite.ask(connection, "SELECT group_concat(step || kind || coalesce(ended_by, '-')) FROM step"))
                    .isEqualTo("2chargecut_off,3rest-");
        }
    }

    private static Cycle offer(RunWriter writer, AnyRun run) {
        Scan scan = run.scan();
        Inbox inbox = run.inbox();
        Orders orders = run.orders();
        List<Event> events = run.events();
        writer.offer(scan, inbox, orders, events);
        return new Cycle(scan, inbox, StoredOrders.of(orders),
                events.stream().flatMap(event -> StoredEvent.of(scan, event).stream()).toList());
    }
}
