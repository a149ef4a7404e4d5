package rigwarden.logbook;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;

/**
 * Reads a run file, finished, left by a crash, or still being written. Every method throws {@link LogbookException}
 * where the file cannot be read.
 */
public final class RunReader implements AutoCloseable {
    private final Connection connection;
    private final RunAbout about;
    private final List<Channel> channels;

    private RunReader(Connection connection) throws SQLException {
        this.connection = connection;
        about = readAbout(connection);
        channels = readChannels(connection);
    }

    /** Opens a file for reading only. A file left by a crash needs a folder that can be written, for its lock table. */
    public static RunReader open(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new LogbookException("There is no run file " + file + ".");
        }
        Connection connection = null;
        try {
            connection = Sqlite.read(file);
            return new RunReader(connection);
        } catch (SQLException | RuntimeException e) {
            closeQuietly(connection);
            throw new LogbookException("The run file " + file + " cannot be read", e);
        }
    }

    private static void closeQuietly(Connection connection) {
        try (Connection _ = connection) {
            return;
        } catch (SQLException _) {
            // The file cannot be read; that is what the caller is told.
        }
    }

    public RunAbout about() {
        return about;
    }

    /** The channels that the codes were recorded with, index = place. */
    public List<Channel> channels() {
        return channels;
    }

    /** All cycles in order, one at a time in memory; close it. */
    public Cycles cycles() {
        try {
            return new Cycles(connection, channels);
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be read", e);
        }
    }

    /**
     * Some channels from one time to another, thinned so that a reading of one scan stays.
     *
     * @param of channels of this file
     * @param fromNanos first time, monotonic
     * @param toNanos time after the last, monotonic
     * @param buckets at most so many, 1 or more
     */
    public Thinned thinned(List<Channel> of, long fromNanos, long toNanos, int buckets) {
        try {
            return Thinned.read(connection, of, fromNanos, toNanos, buckets);
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be read", e);
        }
    }

    /** All events in the order in which they happened. */
    public List<StoredEvent> events() {
        List<StoredEvent> events = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(EventRows.SELECT)) {
            while (row.next()) {
                events.add(EventRows.read(row));
            }
            return List.copyOf(events);
        } catch (SQLException e) {
            throw new LogbookException("The run file's events cannot be read", e);
        }
    }

    /** What SQLite's own check finds wrong with the file; empty when it is whole. */
    public Optional<String> integrity() {
        String found = Sqlite.integrity(connection);
        return found.equals("ok") ? Optional.empty() : Optional.of(found);
    }

    /** Number of the last scan, if there is one. */
    public OptionalLong lastScan() {
        return number("SELECT max(number) FROM scan");
    }

    /** Orders in force at the end; off if there were none. */
    public StoredOrders lastOrders() {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(OrdersRows.SELECT + " ORDER BY scan DESC LIMIT 1")) {
            return row.next() ? OrdersRows.read(row) : StoredOrders.OFF;
        } catch (SQLException e) {
            throw new LogbookException("The run file's orders cannot be read", e);
        }
    }

    /** Number of the step that had begun and not ended at the end of the file. */
    public OptionalInt openStep() {
        OptionalLong step = number("SELECT step FROM step WHERE ended_scan IS NULL ORDER BY begun_scan DESC LIMIT 1");
        return step.isPresent() ? OptionalInt.of(Math.toIntExact(step.getAsLong())) : OptionalInt.empty();
    }

    /** Word of the last event that says how the run went: finished, tripped or stop_requested. */
    public Optional<String> lastOutcome() {
        try {
            String kind = Sqlite.ask(connection, "SELECT kind FROM event "
                    + "WHERE kind IN ('finished', 'tripped', 'stop_requested') ORDER BY number DESC LIMIT 1");
            return kind.isEmpty() ? Optional.empty() : Optional.of(kind);
        } catch (SQLException e) {
            throw new LogbookException("The run file's events cannot be read", e);
        }
    }

    private OptionalLong number(String sql) {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            return row.next() && row.getObject(1) != null ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be read", e);
        }
    }

    private static RunAbout readAbout(Connection connection) throws SQLException {
        Map<String, String> rows = new LinkedHashMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT key, value FROM about")) {
            while (row.next()) {
                rows.put(row.getString(1), row.getString(2));
            }
        }
        return RunAbout.of(rows);
    }

    private static List<Channel> readChannels(Connection connection) throws SQLException {
        List<Channel> channels = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("""
                        SELECT idx, name, role, cell, period_ns, scale, shift, gain_u, offset_u, lowest, highest, lag_s
                        FROM channel WHERE version = %d ORDER BY idx""".formatted(RunTables.AS_RECORDED))) {
            while (row.next()) {
                channels.add(new Channel(row.getInt(1), row.getString(2), Role.valueOf(row.getString(3)),
                        row.getInt(4), row.getLong(5), row.getDouble(6), row.getDouble(7), row.getDouble(8),
                        row.getDouble(9), row.getDouble(10), row.getDouble(11), row.getDouble(12)));
            }
        }
        return List.copyOf(channels);
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be closed", e);
        }
    }
}
