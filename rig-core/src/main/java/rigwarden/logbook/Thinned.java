package rigwarden.logbook;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import rigwarden.rig.Channel;

/**
 * A part of a run file, thinned: the lowest and the highest valid value of each channel in each of a number of buckets of
 * equally many scans. One short query a bucket: a file that is still being written is never held for long.
 *
 * @param nanos time of each bucket's first scan, monotonic
 * @param low by channel, then bucket; {@code NaN} where there is no valid reading
 * @param high the same
 */
public record Thinned(long[] nanos, double[][] low, double[][] high) {
    private static final Thinned NOTHING = new Thinned(new long[0], new double[0][0], new double[0][0]);

    static Thinned read(Connection connection, List<Channel> channels, long fromNanos, long toNanos, int buckets)
            throws SQLException {
        long first = firstAt(connection, fromNanos);
        long last = firstAt(connection, toNanos);
        if (last <= first) {
            return NOTHING;
        }
        long each = Math.max(1, (last - first + buckets - 1) / buckets);
        int count = (int) ((last - first + each - 1) / each);
        long[] nanos = new long[count];
        double[][] low = new double[channels.size()][count];
        double[][] high = new double[channels.size()][count];
        try (PreparedStatement select = connection.prepareStatement(select(channels))) {
            for (int bucket = 0; bucket < count; bucket++) {
                select.setLong(1, first + bucket * each);
                select.setLong(2, Math.min(last, first + (bucket + 1) * each));
                try (ResultSet row = select.executeQuery()) {
                    row.next();
                    nanos[bucket] = row.getLong(1);
                    for (int line = 0; line < channels.size(); line++) {
                        fill(row, channels.get(line), 2 + 2 * line, low[line], high[line], bucket);
                    }
                }
            }
        }
        return new Thinned(nanos, low, high);
    }

    private static String select(List<Channel> channels) {
        return channels.stream()
                .map(c -> RunTables.column(c.index()))
                .map(c -> ", min(" + c + "), max(" + c + ")")
                .collect(Collectors.joining("", "SELECT coalesce(min(nanos), 0)",
                        " FROM scan WHERE number >= ? AND number < ?"));
    }

    /** A negative scale turns the lowest code into the highest value. */
    private static void fill(ResultSet row, Channel channel, int column, double[] low, double[] high, int bucket)
            throws SQLException {
        long lowest = row.getLong(column);
        if (row.wasNull()) {
            low[bucket] = Double.NaN;
            high[bucket] = Double.NaN;
            return;
        }
        double[] ends = {channel.value(lowest), channel.value(row.getLong(column + 1))};
        Arrays.sort(ends);
        low[bucket] = ends[0];
        high[bucket] = ends[1];
    }

    /** Number of the first scan at or after a time, one more than the last when there is none: by halving. */
    private static long firstAt(Connection connection, long nanos) throws SQLException {
        try (PreparedStatement at =
                        connection.prepareStatement("SELECT nanos FROM scan WHERE number >= ? ORDER BY number LIMIT 1");
                PreparedStatement ends = connection.prepareStatement(
                        "SELECT coalesce(min(number), 1), coalesce(max(number), 0) FROM scan");
                ResultSet both = ends.executeQuery()) {
            both.next();
            long low = both.getLong(1);
            long high = both.getLong(2) + 1;
            while (low < high) {
                long middle = (low + high) >>> 1;
                at.setLong(1, middle);
                try (ResultSet row = at.executeQuery()) {
                    if (row.next() && row.getLong(1) < nanos) {
                        low = middle + 1;
                    } else {
                        high = middle;
                    }
                }
            }
            return low;
        }
    }
}
