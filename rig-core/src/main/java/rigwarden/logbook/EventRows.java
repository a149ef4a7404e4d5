package rigwarden.logbook;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import rigwarden.program.Ended;
import rigwarden.run.Account;
import rigwarden.run.Event;
import rigwarden.warden.Scan;

/** The table {@code event}, both ways. */
final class EventRows {
    static final String SELECT = """
            SELECT scan, nanos, kind, step, words, ended_by, settled, account_ns, in_nano_amp_s, out_nano_amp_s,
                in_micro_watt_s, out_micro_watt_s, micro_volt_s, rule, channel, bound, since_ns, value
            FROM event ORDER BY scan, number""";
    private static final int COLUMNS = 18;

    private final PreparedStatement insert;

    EventRows(RunFile file) throws SQLException {
        insert = file.prepare("""
                INSERT INTO event (scan, nanos, kind, step, words, ended_by, settled, account_ns, in_nano_amp_s,
                    out_nano_amp_s, in_micro_watt_s, out_micro_watt_s, micro_volt_s, rule, channel, bound, since_ns,
                    value)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""");
    }

    void close() throws SQLException {
        insert.close();
    }

    void put(Scan scan, List<Event> events) throws SQLException {
        for (Event event : events) {
            for (StoredEvent stored : StoredEvent.of(scan, event)) {
                put(stored);
            }
        }
    }

    void put(StoredEvent event) throws SQLException {
        for (int column = 1; column <= COLUMNS; column++) {
            insert.setNull(column, Types.NULL);
        }
        insert.setLong(1, event.scan());
        insert.setLong(2, event.nanos());
        insert.setString(3, event.kind());
        if (event.step().isPresent()) {
            insert.setInt(4, event.step().getAsInt());
        }
        insert.setString(5, event.words());
        if (event.ended().isPresent()) {
            insert.setString(6, event.ended().get().word());
        }
        if (event.settled().isPresent()) {
            insert.setInt(7, event.settled().get() ? 1 : 0);
        }
        if (event.account().isPresent()) {
            account(event.account().get());
        }
        if (event.cause().isPresent()) {
            cause(event.cause().get());
        }
        if (event.value().isPresent()) {
            insert.setDouble(18, event.value().getAsDouble());
        }
        insert.executeUpdate();
    }

    private void account(Account account) throws SQLException {
        insert.setLong(8, account.nanos());
        insert.setLong(9, account.inNanoAmpSeconds());
        insert.setLong(10, account.outNanoAmpSeconds());
        insert.setLong(11, account.inMicroWattSeconds());
        insert.setLong(12, account.outMicroWattSeconds());
        insert.setLong(13, account.microVoltSeconds());
    }

    private void cause(StoredEvent.Cause cause) throws SQLException {
        insert.setInt(14, cause.rule());
        insert.setInt(15, cause.channel());
        if (cause.limit().isPresent()) {
            insert.setDouble(16, cause.limit().getAsDouble());
        }
        insert.setLong(17, cause.sinceNanos());
    }

    /** The event of the current row of {@link #SELECT}. */
    static StoredEvent read(ResultSet row) throws SQLException {
        String ended = row.getString(6);
        return new StoredEvent(row.getLong(1), row.getLong(2), row.getString(3),
                has(row, 4) ? OptionalInt.of(row.getInt(4)) : OptionalInt.empty(), row.getString(5),
                ended == null ? Optional.empty() : Optional.of(Ended.valueOf(ended.toUpperCase(Locale.ROOT))),
                has(row, 7) ? Optional.of(row.getInt(7) == 1) : Optional.empty(),
                has(row, 8) ? Optional.of(new Account(row.getLong(8), row.getLong(9), row.getLong(10),
                        row.getLong(11), row.getLong(12), row.getLong(13))) : Optional.empty(),
                has(row, 14) ? Optional.of(new StoredEvent.Cause(row.getInt(14), row.getInt(15), number(row, 16),
                        row.getLong(17))) : Optional.empty(),
                number(row, 18));
    }

    private static OptionalDouble number(ResultSet row, int column) throws SQLException {
        return has(row, column) ? OptionalDouble.of(row.getDouble(column)) : OptionalDouble.empty();
    }

    private static boolean has(ResultSet row, int column) throws SQLException {
        return row.getObject(column) != null;
    }
}
