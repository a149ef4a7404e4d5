package rigwarden.logbook;

import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;

/** Connections to SQLite files, and the few questions that every file is asked. */
final class Sqlite {
    /** What {@code PRAGMA synchronous} reads back for FULL. */
    static final int FULL = 2;
    /** What it reads back for EXTRA, which also syncs the folder after the journal is gone. */
    static final int EXTRA = 3;
    private static final int BUSY_MILLIS = 5000;

    private Sqlite() {}

    static Connection write(Path file) throws SQLException {
        return open(file, new SQLiteConfig());
    }

    static Connection read(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        return open(file, config);
    }

    private static Connection open(Path file, SQLiteConfig config) throws SQLException {
        config.setBusyTimeout(BUSY_MILLIS);
        // Else the driver searches the text of every insert with a regular expression and asks for its key.
        config.setGetGeneratedKeys(false);
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
    }

    static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    /** First column of the first row, as text; empty if the statement says nothing. */
    static String ask(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            if (!statement.execute(sql)) {
                return "";
            }
            try (ResultSet rows = statement.getResultSet()) {
                return rows.next() ? String.valueOf(rows.getString(1)) : "";
            }
        }
    }

    /** Sets a pragma and proves it by reading it back. */
    static void insist(Connection connection, String pragma, String value, String readBack) throws SQLException {
        ask(connection, "PRAGMA " + pragma + " = " + value);
        String got = ask(connection, "PRAGMA " + pragma);
        if (!got.equalsIgnoreCase(readBack)) {
            throw new SQLException("PRAGMA " + pragma + " reads back " + got + " where " + readBack + " must be");
        }
    }

    /** What {@code integrity_check} finds; "ok" if nothing. */
    static String integrity(Connection connection) {
        try {
            return ask(connection, "PRAGMA integrity_check");
        } catch (SQLException e) {
            return e.getMessage();
        }
    }

    /** Whether another connection holds the file locked. */
    static boolean busy(Exception exception) {
        return has(exception, SQLiteErrorCode.SQLITE_BUSY);
    }

    /** Whether the file system is out of space, or the file may not grow. */
    static boolean full(Exception exception) {
        return has(exception, SQLiteErrorCode.SQLITE_FULL);
    }

    /** What a failure of the database means to a person; where nothing is known of it, its own words. */
    static String plain(Throwable thrown) {
        if (thrown instanceof SQLException sql && has(sql, SQLiteErrorCode.SQLITE_NOTADB)) {
            return "it is no run file, nor a ledger";
        }
        if (thrown instanceof SQLException sql && has(sql, SQLiteErrorCode.SQLITE_CORRUPT)) {
            return "it is damaged, or was cut short";
        }
        if (thrown instanceof NoSuchFileException) {
            return "it is not there, and cannot be made there";
        }
        String words = String.valueOf(thrown.getMessage());
        return words.contains("no such table") || words.contains("no such column") ? "it was not written by Rigwarden, or is empty" : words;
    }

    private static boolean has(Exception exception, SQLiteErrorCode code) {
        return exception instanceof SQLException sql && (sql.getErrorCode() & 0xff) == code.code;
    }
}
