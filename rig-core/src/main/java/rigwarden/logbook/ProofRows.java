package rigwarden.logbook;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** The ledger's proofs, one row for each outcome. */
final class ProofRows {
    private ProofRows() {}

    /** A ledger that was made before proofs were signed, or before they named calibrations and cells, gets the columns. */
    static void grow(Connection connection) throws SQLException {
        grow(connection, "rig_hash", "TEXT NOT NULL DEFAULT ''");
        grow(connection, "who", "TEXT NOT NULL DEFAULT ''");
        grow(connection, "rehearsed", "INTEGER NOT NULL DEFAULT 0 CHECK (rehearsed IN (0, 1))");
        grow(connection, "calibration_hash", "TEXT NOT NULL DEFAULT ''");
        grow(connection, "cells", "TEXT NOT NULL DEFAULT ''");
    }

    private static void grow(Connection connection, String column, String type) throws SQLException {
        if (Sqlite.ask(connection, "SELECT count(*) FROM pragma_table_info('proof') WHERE name = '" + column + "'").equals("0")) {
            Sqlite.run(connection, "ALTER TABLE proof ADD COLUMN " + column + " " + type);
        }
    }

    /** All or nothing. */
    static void add(Connection connection, List<StoredProof> proofs) throws SQLException {
        connection.setAutoCommit(false);
        try (PreparedStatement insert = connection.prepareStatement("""
                INSERT INTO proof (rig, run, kind, passed, made, words, rig_hash, who, rehearsed, calibration_hash, cells)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")) {
            for (StoredProof proof : proofs) {
                insert.setString(1, proof.rig());
                if (proof.run().isPresent()) {
                    insert.setInt(2, proof.run().getAsInt());
                } else {
                    insert.setNull(2, Types.INTEGER);
                }
                insert.setString(3, proof.kind());
                insert.setInt(4, proof.passed() ? 1 : 0);
                insert.setString(5, proof.made());
                insert.setString(6, proof.words());
                insert.setString(7, proof.of().rigHash());
                insert.setString(8, proof.who());
                insert.setInt(9, proof.rehearsed() ? 1 : 0);
                insert.setString(10, proof.of().calibrationHash());
                insert.setString(11, proof.of().cells());
                insert.executeUpdate();
            }
            connection.commit();
        } catch (SQLException e) {
            connection.rollback();
            throw e;
        } finally {
            connection.setAutoCommit(true);
        }
    }

    /** In the order in which they were made. */
    static List<StoredProof> all(Connection connection) throws SQLException {
        List<StoredProof> proofs = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT rig, run, kind, passed, made, words, rig_hash, who, rehearsed, calibration_hash, cells FROM proof ORDER BY number")) {
            while (row.next()) {
                OptionalInt run = row.getObject(2) == null ? OptionalInt.empty() : OptionalInt.of(row.getInt(2));
                proofs.add(new StoredProof(row.getString(1), run, row.getString(3), row.getInt(4) == 1, row.getString(5), row.getString(6),
                        new StoredProof.Of(row.getString(7), row.getString(10), row.getString(11)), row.getString(8), row.getInt(9) == 1));
            }
        }
        return List.copyOf(proofs);
    }
}
