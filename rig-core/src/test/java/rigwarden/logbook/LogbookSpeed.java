package rigwarden.logbook;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import rigwarden.rig.Channel;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * Rows a second of {@link RunWriter} and of a bare JDBC insert of the same rows into the same tables, with the same
 * pragmas and the same rule for commits. Arguments: rows, channels, jitter of the times in nanoseconds (0 for none),
 * rows of the queue, rows to a commit.
 */
public final class LogbookSpeed {
    private final int rows;
    private final List<Channel> channels;
    private final int jitterNanos;
    private final RunSettings settings;

    private LogbookSpeed(int rows, int channels, int jitterNanos, RunSettings settings) {
        this.settings = settings;
        this.rows = rows;
        this.channels = AnyRun.channels(channels);
        this.jitterNanos = jitterNanos;
    }

    public static void main(String[] arguments) throws Exception {
        int[] numbers = Arrays.stream(arguments).mapToInt(Integer::parseInt).toArray();
        RunSettings settings = RunSettings.USUAL.withBallast(0).withQueue(numbers[3], numbers[4]);
        new LogbookSpeed(numbers[0], numbers[1], numbers[2], settings).compare();
    }

    private void compare() throws Exception {
        Path dir = Files.createTempDirectory("logbook-speed");
        for (int round = 1; round <= 3; round++) {
            Path bare = dir.resolve("bare.db");
            Path ours = dir.resolve("ours.db");
            double bareSeconds = seconds(() -> bare(bare));
            double oursSeconds = seconds(() -> ours(ours));
            System.out.printf(Locale.ROOT, "%d rows of %d channels: bare %.2f s, %.0f rows/s; ours %.2f s, "
                    + "%.0f rows/s; ours/bare %.3f; %d MB and %d MB; same rows: %s%n", rows, channels.size(),
                    bareSeconds, rows / bareSeconds, oursSeconds, rows / oursSeconds, bareSeconds / oursSeconds,
                    Files.size(bare) >> 20, Files.size(ours) >> 20, same(bare, ours));
            Files.delete(bare);
            Files.delete(ours);
        }
        Files.delete(dir);
    }

    private interface Work {
        void run() throws SQLException, IOException;
    }

    private static double seconds(Work work) throws SQLException, IOException {
        long began = System.nanoTime();
        work.run();
        return (System.nanoTime() - began) * 1e-9;
    }

    private static boolean same(Path bare, Path ours) throws SQLException {
        try (Connection connection = Sqlite.read(bare)) {
            Sqlite.run(connection, "ATTACH '" + ours + "' AS ours");
            return Sqlite.ask(connection, "SELECT count(*) FROM (SELECT * FROM scan EXCEPT SELECT * FROM ours.scan)")
                    .equals("0");
        }
    }

    private boolean fresh(int number, int channel) {
        return channels.get(channel).periodNanos() == AnyRun.SCAN_NANOS || number % 10 == 1;
    }

    private static int code(int number, int channel) {
        int mixed = (number * 31 + channel) * 0x9E3779B1;
        return 26_000 + (mixed >>> 23);
    }

    private int offset(int number, int channel) {
        return jitterNanos == 0 ? 1000 * channel : Math.floorMod(number * 7919 + channel * 104_729, jitterNanos);
    }

    private void ours(Path file) {
        Reading[] readings = new Reading[channels.size()];
        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, channels, settings, _ -> {})) {
            for (int number = 1; number <= rows; number++) {
                long nanos = number * AnyRun.SCAN_NANOS;
                for (int channel = 0; channel < readings.length; channel++) {
                    if (fresh(number, channel)) {
                        readings[channel] = Reading.of(channels.get(channel), code(number, channel),
                                nanos + offset(number, channel));
                    }
                }
                while (writer.fill() > 0.5) {
                    LockSupport.parkNanos(1_000_000);
                }
                writer.offer(new Scan(number, nanos, List.of(readings)), Inbox.EMPTY, Orders.OFF, List.of());
            }
        }
    }

    private void bare(Path file) throws SQLException {
        RunFile made = RunFile.create(file, AnyRun.ABOUT, channels, 0);
        PreparedStatement insert = made.prepare(RunTables.insertScan(channels.size()));
        made.begin();
        long due = System.nanoTime() + settings.commitNanos();
        for (int number = 1; number <= rows; number++) {
            bind(insert, number);
            insert.executeUpdate();
            if (number % settings.commitRows() == 0 || System.nanoTime() - due >= 0) {
                made.commit();
                made.begin();
                due = System.nanoTime() + settings.commitNanos();
            }
        }
        made.commit();
        made.finish();
    }

    private void bind(PreparedStatement insert, int number) throws SQLException {
        long mask = 0;
        int count = 0;
        for (int channel = 0; channel < channels.size(); channel++) {
            if (fresh(number, channel)) {
                mask |= 1L << channel;
                count++;
                insert.setLong(5 + channel, code(number, channel));
            } else {
                insert.setLong(5 + channel, code(number - (number + 9) % 10, channel));
            }
        }
        insert.setLong(1, number);
        insert.setLong(2, number * AnyRun.SCAN_NANOS);
        insert.setLong(3, mask);
        if (jitterNanos == 0 && number > 1) {
            insert.setNull(4, Types.BLOB);
            return;
        }
        ByteBuffer times = ByteBuffer.allocate(4 * count).order(ByteOrder.LITTLE_ENDIAN);
        for (int channel = 0; channel < channels.size(); channel++) {
            if (fresh(number, channel)) {
                times.putInt(offset(number, channel));
            }
        }
        insert.setBytes(4, times.array());
    }
}
