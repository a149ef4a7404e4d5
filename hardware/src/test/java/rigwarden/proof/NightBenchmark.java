package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import com.pi4j.io.i2c.I2C;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;
import rigwarden.emulated.EmulatedBoard;
import rigwarden.emulated.Rehearsal;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.loop.Recorder;
import rigwarden.pack.World;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.run.Next;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.warden.Granted;
import rigwarden.warden.Guard;
import rigwarden.warden.Inbox;
import rigwarden.warden.Judged;
import rigwarden.warden.Orders;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;
import rigwarden.warden.Warden;

/**
 * How fast a night runs, as a ratio beside a reference in the same process. Not part of the default run, because a busy
 * machine is no defect: {@code -Dtest=NightBenchmark}.
 */
class NightBenchmark {
    private static final Rig RIG = Bench.rig();
    private static final int CHUNK = 50_000;
    private static final int COMMIT_ROWS = 1_000;

    @TempDir
    private Path folder;

    /** The whole path with every scan stored against bare inserts of the same rows: table, pragmas, commit rule, JVM. */
    @Test
    void the_whole_path_costs_no_more_than_half_as_much_again_as_bare_inserts() throws Exception {
        double best = Double.MAX_VALUE;
        for (int round = 1; round <= 3; round++) {
            Path file = folder.resolve("night" + round + ".db");
            long began = System.nanoTime();
            long scans = stored(file);
            double whole = (System.nanoTime() - began) * 1e-9;
            double bare = bare(file, folder.resolve("bare" + round + ".db"));
            best = Math.min(best, whole / bare);
            System.out.printf("round %d: %d scans; whole path %.2f s (%.0f scans/s), bare inserts %.2f s, ratio %.2f%n",
                    round, scans, whole, scans / whole, bare, whole / bare);
        }
        assertThat(best).as("whole path ÷ bare inserts, best of three").isLessThanOrEqualTo(1.5);
    }

    private static long stored(Path file) throws Exception {
        RunAbout about = new RunAbout("", "", Map.of(), "emulated", 1, true, "rehearsal", 0);
        long scans = 0;
        try (RunWriter writer = RunWriter.create(file, about, RIG.channels(), RunSettings.USUAL.withBallast(0), _ -> { })) {
            Rehearsal rehearsal = new Rehearsal(RIG, Bench.night(), 1, List.of(), writer);
            while (!rehearsal.over()) {
                rehearsal.scan();
                scans++;
                while (writer.fill() > 0.5) {
                    LockSupport.parkNanos(200_000);
                }
            }
        }
        return scans;
    }

    /** Seconds of bare JDBC: rows are read into memory untimed, chunk by chunk, and inserted timed. */
    private static double bare(Path from, Path to) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setGetGeneratedKeys(false);
        long nanos = 0;
        try (Connection source = config.createConnection("jdbc:sqlite:" + from);
                Connection target = config.createConnection("jdbc:sqlite:" + to);
                Statement read = source.createStatement();
                Statement write = target.createStatement()) {
            write.execute("PRAGMA journal_mode = WAL");
            write.execute("PRAGMA synchronous = FULL");
            String table;
            try (ResultSet schema = read.executeQuery("SELECT sql FROM sqlite_master WHERE name = 'scan'")) {
                table = schema.getString(1);
            }
            write.execute(table);
            try (ResultSet rows = read.executeQuery("SELECT * FROM scan ORDER BY number")) {
                int columns = rows.getMetaData().getColumnCount();
                String marks = "?" + ", ?".repeat(columns - 1);
                try (PreparedStatement insert = target.prepareStatement("INSERT INTO scan VALUES (" + marks + ")")) {
                    for (List<Object[]> chunk = chunk(rows, columns); !chunk.isEmpty(); chunk = chunk(rows, columns)) {
                        long began = System.nanoTime();
                        inserted(chunk, insert, write);
                        nanos += System.nanoTime() - began;
                    }
                }
            }
        }
        return nanos * 1e-9;
    }

    private static List<Object[]> chunk(ResultSet rows, int columns) throws SQLException {
        List<Object[]> chunk = new ArrayList<>();
        while (chunk.size() < CHUNK && rows.next()) {
            Object[] row = new Object[columns];
            for (int i = 0; i < columns; i++) {
                Object value = rows.getObject(i + 1);
                row[i] = value instanceof Number number ? Long.valueOf(number.longValue()) : value;
            }
            chunk.add(row);
        }
        return chunk;
    }

    private static void inserted(List<Object[]> chunk, PreparedStatement insert, Statement write) throws SQLException {
        int open = 0;
        for (Object[] row : chunk) {
            if (open == 0) {
                write.execute("BEGIN IMMEDIATE");
            }
            for (int i = 0; i < row.length; i++) {
                if (row[i] instanceof Long number) {
                    insert.setLong(i + 1, number);
                } else {
                    insert.setObject(i + 1, row[i]);
                }
            }
            insert.executeUpdate();
            if (++open == COMMIT_ROWS) {
                write.execute("COMMIT");
                open = 0;
            }
        }
        if (open > 0) {
            write.execute("COMMIT");
        }
    }

    /** Without storing: scans a second, and where the time goes. */
    @Test
    void without_storing_a_night_runs_at_a_quarter_of_a_million_scans_a_second() {
        double best = 0;
        for (int round = 1; round <= 4; round++) {
            Rehearsal rehearsal = Bench.rehearsal(1);
            long scans = 0;
            long began = System.nanoTime();
            while (!rehearsal.over()) {
                rehearsal.scan();
                scans++;
            }
            double seconds = (System.nanoTime() - began) * 1e-9;
            best = Math.max(best, scans / seconds);
            System.out.printf("round %d: %d scans in %.2f s, %.0f scans/s%n", round, scans, seconds, scans / seconds);
        }
        split();
        System.out.println(split());
        System.out.printf("best %.0f scans/s%n", best);
    }

    /** The loop with a clock between its parts; world and wire are taken by themselves on the same figures. Cold when called first. */
    private static String split() {
        Rehearsal rehearsal = Bench.rehearsal(1);
        Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 3));
        int scans = 200_000;
        World world = rehearsal.rig().world().copy();
        long t0 = System.nanoTime();
        for (int i = 0; i < scans; i++) {
            world.advanceTo(world.nanos() + RIG.scanNanos());
        }
        double worldNanos = (double) (System.nanoTime() - t0) / scans;
        EmulatedBoard board = rehearsal.rig().emulatedBoard();
        I2C device = (I2C) board.context().registry().all().values().stream()
                .filter(io -> io instanceof I2C)
                .findFirst()
                .orElseThrow();
        byte[] buffer = new byte[3];
        t0 = System.nanoTime();
        for (int i = 0; i < 4 * scans; i++) {
            device.readRegister(i & 1, buffer, 0, 2);
        }
        double transaction = (double) (System.nanoTime() - t0) / (4 * scans);
        Warden warden = new Warden(RIG);
        RunMachine machine = new RunMachine(RIG, Bench.night());
        long[] spent = new long[4];
        long before = board.traffic().all();
        Copied copied = new Copied(warden, machine, spent);
        Rehearsal timed = rehearsal.copy(copied);
        long began = System.nanoTime();
        for (int i = 0; i < scans; i++) {
            timed.scan();
        }
        double total = (double) (System.nanoTime() - began) / scans;
        double judge = (double) spent[0] / scans;
        double next = (double) spent[1] / scans;
        double grant = (double) spent[2] / scans;
        double wire = transaction * (timed.rig().emulatedBoard().traffic().all() / (double) scans);
        double rest = total - 2 * (judge + next + grant) - worldNanos - wire;
        assertThat(before).isPositive();
        return "of a scan: world %.0f ns, wire %.0f ns (%.0f ns each), drivers, agents and loop %.0f ns, warden %.0f ns, machine %.0f ns"
                .formatted(worldNanos, wire, transaction, rest, judge + grant, next);
    }

    /** Puts every scan through a second warden and machine, and times those. */
    private static final class Copied implements Recorder {
        private final Warden warden;
        private final RunMachine machine;
        private final long[] spent;
        private Guard guard;
        private RunState state = RunState.IDLE;
        private Orders inForce = Orders.OFF;
        private boolean begun;

        Copied(Warden warden, RunMachine machine, long[] spent) {
            this.warden = warden;
            this.machine = machine;
            this.spent = spent;
            guard = warden.fresh(0);
        }

        @Override
        public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
            Inbox in = begun ? Inbox.EMPTY : Inbox.of(Request.START);
            begun = true;
            long a = System.nanoTime();
            Judged judged = warden.judge(guard, scan, inForce, in);
            long b = System.nanoTime();
            Next next = machine.next(state, judged.verdict(), scan, in);
            long c = System.nanoTime();
            Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, next.wish());
            long d = System.nanoTime();
            spent[0] += b - a;
            spent[1] += c - b;
            spent[2] += d - c;
            guard = granted.guard();
            state = next.state();
            inForce = granted.orders();
        }
    }
}
