package rigwarden.logbook;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import rigwarden.rig.Channel;

/**
 * A run file open for writing. Transactions are explicit statements, never the driver's own: when the disk is full
 * SQLite has rolled back already, and the driver's rollback then leaves its connection confused (platform.md, 4).
 */
final class RunFile implements AutoCloseable {
    private static final int BLOCK = 1 << 20;

    private final Path file;
    private final Path ballast;
    private final Connection connection;

    private RunFile(Path file, Connection connection) {
        this.file = file;
        this.ballast = ballastOf(file);
        this.connection = connection;
    }

    /** Makes a file with its tables. Throws {@link LogbookException} if there is one already or it cannot be made. */
    static RunFile create(Path file, RunAbout about, List<Channel> channels, long ballastBytes) {
        if (channels.isEmpty() || channels.size() > RunTables.MOST_CHANNELS) {
            throw new LogbookException("A run file holds 1 to " + RunTables.MOST_CHANNELS + " channels; this rig has "
                    + channels.size() + ".");
        }
        if (Files.exists(file)) {
            throw new LogbookException("The run file " + file + " is there already and is not written over.");
        }
        try {
            RunFile made = new RunFile(file, Sqlite.write(file));
            made.prepare(about, channels, ballastBytes);
            return made;
        } catch (SQLException | IOException e) {
            throw new LogbookException("The run file " + file + " cannot be made", e);
        }
    }

    private void prepare(RunAbout about, List<Channel> channels, long ballastBytes) throws SQLException, IOException {
        boolean ready = false;
        try {
            Sqlite.insist(connection, "journal_mode", "WAL", "wal");
            Sqlite.insist(connection, "synchronous", "FULL", Integer.toString(Sqlite.FULL));
            Sqlite.insist(connection, "journal_size_limit", "8388608", "8388608");
            Sqlite.run(connection, "BEGIN IMMEDIATE");
            for (String sql : RunTables.create(channels, about.originNanos())) {
                Sqlite.run(connection, sql);
            }
            describe(about.rows(), channels);
            Sqlite.run(connection, "COMMIT");
            leaveTransactionsToUs();
            fillBallast(ballastBytes);
            ready = true;
        } finally {
            if (!ready) {
                connection.close();
            }
        }
    }

    /** In auto-commit the driver tries a BEGIN after every insert; so it is told otherwise, and its BEGIN ended. */
    private void leaveTransactionsToUs() throws SQLException {
        connection.setAutoCommit(false);
        Sqlite.run(connection, "COMMIT");
    }

    private void describe(Map<String, String> about, List<Channel> channels) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO about VALUES (?, ?)")) {
            for (Map.Entry<String, String> row : about.entrySet()) {
                insert.setString(1, row.getKey());
                insert.setString(2, row.getValue());
                insert.executeUpdate();
            }
        }
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO channel VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            for (Channel channel : channels) {
                insert.setInt(1, RunTables.AS_RECORDED);
                insert.setInt(2, channel.index());
                insert.setString(3, channel.name());
                insert.setString(4, channel.role().name());
                insert.setInt(5, channel.cell());
                insert.setString(6, channel.quantity().symbol());
                insert.setLong(7, channel.periodNanos());
                insert.setDouble(8, channel.scale());
                insert.setDouble(9, channel.shift());
                insert.setDouble(10, channel.gainU());
                insert.setDouble(11, channel.offsetU());
                insert.setDouble(12, channel.lowest());
                insert.setDouble(13, channel.highest());
                insert.setDouble(14, channel.lagSeconds());
                insert.executeUpdate();
            }
        }
    }

    /** Real bytes, not a hole: a hole would free nothing. */
    private void fillBallast(long bytes) throws IOException {
        if (bytes == 0) {
            return;
        }
        try (OutputStream out = Files.newOutputStream(ballast, StandardOpenOption.CREATE_NEW)) {
            byte[] block = new byte[BLOCK];
            for (long left = bytes; left > 0; left -= BLOCK) {
                out.write(block, 0, (int) Math.min(left, BLOCK));
            }
        }
    }

    /** Gives the ballast up; false if there is none any more. */
    boolean dropBallast() {
        try {
            return Files.deleteIfExists(ballast);
        } catch (IOException _) {
            return false;
        }
    }

    PreparedStatement prepare(String sql) throws SQLException {
        return connection.prepareStatement(sql);
    }

    void begin() throws SQLException {
        Sqlite.run(connection, "BEGIN IMMEDIATE");
    }

    void commit() throws SQLException {
        Sqlite.run(connection, "COMMIT");
    }

    /** Rolls back if SQLite has not done so itself. */
    void rollback() {
        try {
            Sqlite.run(connection, "ROLLBACK");
        } catch (SQLException _) {
            // SQLite rolled back already: there is no transaction left, which is what was wanted.
        }
    }

    void checkpoint() throws SQLException {
        Sqlite.ask(connection, "PRAGMA wal_checkpoint(PASSIVE)");
    }

    int synchronous() throws SQLException {
        return Integer.parseInt(Sqlite.ask(connection, "PRAGMA synchronous"));
    }

    /** Limits the file's pages of 4096 bytes, as a full disk would. */
    void limitPages(long pages) throws SQLException {
        Sqlite.ask(connection, "PRAGMA max_page_count = " + pages);
    }

    /** Turns the file into one self-contained, read-only file and closes it. */
    void finish() throws SQLException {
        seal(file, connection);
        dropBallast();
    }

    /** Brings the write-ahead log into the file, leaves no file beside it, closes it and makes it read-only. */
    static void seal(Path file, Connection connection) throws SQLException {
        Sqlite.ask(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
        Sqlite.insist(connection, "journal_mode", "DELETE", "delete");
        if (!file.toFile().setReadOnly()) {
            throw new SQLException("the file cannot be made read-only");
        }
        connection.close();
    }

    static Path ballastOf(Path file) {
        return file.resolveSibling(file.getFileName() + ".ballast");
    }

    /** Closes the file as it is; what was committed stays in it and its write-ahead log. */
    @Override
    public void close() {
        dropBallast();
        try {
            connection.close();
        } catch (SQLException _) {
            // Nothing can be done for it; what was committed is safe.
        }
    }
}
