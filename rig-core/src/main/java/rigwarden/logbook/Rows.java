package rigwarden.logbook;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Rows of a table in order of scans, one ahead. */
final class Rows implements AutoCloseable {
    private final Statement statement;
    private final ResultSet result;
    private boolean there;

    Rows(Connection connection, String sql) throws SQLException {
        statement = connection.createStatement();
        result = statement.executeQuery(sql);
        there = result.next();
    }

    /** Whether there is a row, and it belongs to this scan or an earlier one. Its first column is the scan. */
    boolean upTo(long scan) throws SQLException {
        return there && result.getLong(1) <= scan;
    }

    boolean there() {
        return there;
    }

    ResultSet row() {
        return result;
    }

    void next() throws SQLException {
        there = result.next();
    }

    @Override
    public void close() throws SQLException {
        statement.close();
    }
}
