package rigwarden.logbook;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import rigwarden.joint.JointOhms;
import rigwarden.rig.ChannelCalibration;

/** The file {@code ledger.db}: what outlives a run. Small and seldom written, so it needs no write-ahead log. */
final class Ledger implements AutoCloseable {
    private static final String TABLES = """
            CREATE TABLE IF NOT EXISTS run (
                number INTEGER PRIMARY KEY, file TEXT NOT NULL UNIQUE, rig TEXT NOT NULL, programme TEXT NOT NULL,
                started TEXT NOT NULL,
                state TEXT NOT NULL CHECK (state IN ('running', 'finished', 'tripped', 'stopped', 'interrupted')),
                words TEXT NOT NULL, sha256 TEXT, continues INTEGER REFERENCES run, abandoned TEXT) STRICT;
            CREATE TABLE IF NOT EXISTS lot (
                number INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, rated_ah REAL NOT NULL,
                words TEXT NOT NULL) STRICT;
            CREATE TABLE IF NOT EXISTS cell (
                number INTEGER PRIMARY KEY, lot INTEGER NOT NULL REFERENCES lot, label TEXT NOT NULL,
                words TEXT NOT NULL, UNIQUE (lot, label)) STRICT;
            CREATE TABLE IF NOT EXISTS joint (
                number INTEGER PRIMARY KEY, name TEXT NOT NULL, run INTEGER REFERENCES run, ohms REAL NOT NULL,
                u_ohms REAL NOT NULL, measured TEXT NOT NULL) STRICT;
            CREATE TABLE IF NOT EXISTS proof (
                number INTEGER PRIMARY KEY, rig TEXT NOT NULL, run INTEGER REFERENCES run, kind TEXT NOT NULL,
                passed INTEGER NOT NULL CHECK (passed IN (0, 1)), made TEXT NOT NULL, words TEXT NOT NULL) STRICT;
            CREATE TABLE IF NOT EXISTS calibration (
                number INTEGER PRIMARY KEY, rig TEXT NOT NULL, channel TEXT NOT NULL, gain REAL NOT NULL,
                shift REAL NOT NULL, gain_u REAL NOT NULL, offset_u REAL NOT NULL, made TEXT NOT NULL,
                words TEXT NOT NULL) STRICT;
            CREATE TABLE IF NOT EXISTS audit (
                number INTEGER PRIMARY KEY, made TEXT NOT NULL, who TEXT NOT NULL, words TEXT NOT NULL) STRICT;
            CREATE TABLE IF NOT EXISTS caution (
                rig_sha256 TEXT PRIMARY KEY, rig TEXT NOT NULL, confirmed TEXT NOT NULL, words TEXT NOT NULL) STRICT;
            """;

    private final Connection connection;

    private Ledger(Connection connection) {
        this.connection = connection;
    }

    /** Opens or makes a ledger; throws if the file is not a whole SQLite file with these tables. */
    static Ledger open(Path file) throws SQLException {
        Connection connection = Sqlite.write(file);
        boolean ready = false;
        try {
            String found = Sqlite.ask(connection, "PRAGMA integrity_check");
            if (!found.equals("ok")) {
                throw new SQLException("its integrity check says: " + found);
            }
            Sqlite.insist(connection, "journal_mode", "DELETE", "delete");
            Sqlite.insist(connection, "synchronous", "EXTRA", Integer.toString(Sqlite.EXTRA));
            Sqlite.insist(connection, "foreign_keys", "ON", "1");
            Sqlite.run(connection, TABLES);
            grow(connection);
            ProofRows.grow(connection);
            Ledger ledger = new Ledger(connection);
            ledger.runs();
            ready = true;
            return ledger;
        } finally {
            if (!ready) {
                connection.close();
            }
        }
    }

    /** A ledger that was made before runs could be continued gets the two columns. */
    private static void grow(Connection connection) throws SQLException {
        if (Sqlite.ask(connection, "SELECT count(*) FROM pragma_table_info('run') WHERE name = 'continues'").equals("0")) {
            Sqlite.run(connection, "ALTER TABLE run ADD COLUMN continues INTEGER REFERENCES run");
            Sqlite.run(connection, "ALTER TABLE run ADD COLUMN abandoned TEXT");
        }
    }

    void add(LedgerRun run) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO run VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            insert.setInt(1, run.number());
            insert.setString(2, run.file());
            insert.setString(3, run.rig());
            insert.setString(4, run.programme());
            insert.setString(5, run.started());
            insert.setString(6, run.outcome().word());
            insert.setString(7, run.words());
            insert.setString(8, run.sha256().orElse(null));
            if (run.continues().isPresent()) {
                insert.setInt(9, run.continues().getAsInt());
            } else {
                insert.setNull(9, Types.INTEGER);
            }
            insert.setString(10, run.abandoned().orElse(null));
            insert.executeUpdate();
        }
    }

    void close(int number, Outcome outcome, String words, Optional<String> sha256) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement(
                "UPDATE run SET state = ?, words = ?, sha256 = ? WHERE number = ? AND state = 'running'")) {
            update.setString(1, outcome.word());
            update.setString(2, words);
            update.setString(3, sha256.orElse(null));
            update.setInt(4, number);
            if (update.executeUpdate() != 1) {
                throw new SQLException("run " + number + " is not running");
            }
        }
    }

    /** Closes a run that was broken off, for good; false where it is not one that waits for that. */
    boolean abandon(int number, String why) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement("""
                UPDATE run SET abandoned = ? WHERE number = ? AND state IN ('interrupted', 'tripped')
                    AND abandoned IS NULL AND number NOT IN (SELECT continues FROM run WHERE continues IS NOT NULL)""")) {
            update.setString(1, why);
            update.setInt(2, number);
            return update.executeUpdate() == 1;
        }
    }

    void joint(int run, JointOhms joint, String measured) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO joint (name, run, ohms, u_ohms, measured) VALUES (?, ?, ?, ?, ?)")) {
            insert.setString(1, joint.joint());
            insert.setInt(2, run);
            insert.setDouble(3, joint.ohms());
            insert.setDouble(4, joint.expandedOhms());
            insert.setString(5, measured);
            insert.executeUpdate();
        }
    }

    /** What was last found on each joint of a run; a family is not kept, the rig file tells it. */
    List<JointOhms> joints(int run) throws SQLException {
        List<JointOhms> joints = new ArrayList<>();
        try (PreparedStatement ask = connection.prepareStatement("""
                SELECT name, ohms, u_ohms FROM joint WHERE number IN (SELECT max(number) FROM joint WHERE run = ? GROUP BY name)
                ORDER BY number""")) {
            ask.setInt(1, run);
            try (ResultSet row = ask.executeQuery()) {
                while (row.next()) {
                    joints.add(new JointOhms(row.getString(1), "", row.getDouble(2), row.getDouble(3)));
                }
            }
        }
        return List.copyOf(joints);
    }

    void calibration(String rig, ChannelCalibration found) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO calibration (rig, channel, gain, shift, gain_u, offset_u, made, words) VALUES (?, ?, ?, ?, ?, ?, ?, ?)")) {
            insert.setString(1, rig);
            insert.setString(2, found.channel());
            insert.setDouble(3, found.gain());
            insert.setDouble(4, found.offset());
            insert.setDouble(5, found.doubt().gainU());
            insert.setDouble(6, found.doubt().offsetU());
            insert.setString(7, found.made().toString());
            insert.setString(8, found.text());
            insert.executeUpdate();
        }
    }

    /** Texts of the calibrations of a rig, in the order in which they were made. */
    List<String> calibrations(String rig) throws SQLException {
        List<String> texts = new ArrayList<>();
        try (PreparedStatement ask = connection.prepareStatement("SELECT words FROM calibration WHERE rig = ? ORDER BY number")) {
            ask.setString(1, rig);
            try (ResultSet row = ask.executeQuery()) {
                while (row.next()) {
                    texts.add(row.getString(1));
                }
            }
        }
        return List.copyOf(texts);
    }

    boolean cautioned(String rigHash, String words) throws SQLException {
        try (PreparedStatement ask = connection.prepareStatement("SELECT 1 FROM caution WHERE rig_sha256 = ? AND words = ?")) {
            ask.setString(1, rigHash);
            ask.setString(2, words);
            try (ResultSet row = ask.executeQuery()) {
                return row.next();
            }
        }
    }

    void caution(String rigHash, String rig, String confirmed, String words) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("INSERT OR REPLACE INTO caution VALUES (?, ?, ?, ?)")) {
            insert.setString(1, rigHash);
            insert.setString(2, rig);
            insert.setString(3, confirmed);
            insert.setString(4, words);
            insert.executeUpdate();
        }
    }

    /** Takes back that a run goes on with another: it never did. */
    void continuesNone(int number) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement("UPDATE run SET continues = NULL WHERE number = ?")) {
            update.setInt(1, number);
            update.executeUpdate();
        }
    }

    List<LedgerRun> runs() throws SQLException {
        List<LedgerRun> runs = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("""
                        SELECT number, file, rig, programme, started, state, words, sha256, continues, abandoned
                        FROM run ORDER BY number""")) {
            while (row.next()) {
                runs.add(new LedgerRun(row.getInt(1), row.getString(2), row.getString(3), row.getString(4),
                        row.getString(5), Outcome.of(row.getString(6)), row.getString(7),
                        Optional.ofNullable(row.getString(8)),
                        row.getObject(9) == null ? OptionalInt.empty() : OptionalInt.of(row.getInt(9)),
                        Optional.ofNullable(row.getString(10))));
            }
        }
        return List.copyOf(runs);
    }

    void add(List<StoredProof> proofs) throws SQLException {
        ProofRows.add(connection, proofs);
    }

    List<StoredProof> proofs() throws SQLException {
        return ProofRows.all(connection);
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
