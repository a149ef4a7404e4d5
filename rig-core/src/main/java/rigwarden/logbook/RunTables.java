package rigwarden.logbook;

import java.util.List;
import rigwarden.rig.Channel;

/** The tables of a run file, in SQL. All are STRICT: a value of the wrong type is refused, not converted. */
final class RunTables {
    /** Channels that fit into the bits of the column {@code fresh}. */
    static final int MOST_CHANNELS = 64;
    /** Version of the channels that the codes were recorded with. */
    static final int AS_RECORDED = 1;

    private static final String FIXED = """
            CREATE TABLE about (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
            CREATE TABLE channel (
                version INTEGER NOT NULL, idx INTEGER NOT NULL, name TEXT NOT NULL, role TEXT NOT NULL,
                cell INTEGER NOT NULL, unit TEXT NOT NULL, period_ns INTEGER NOT NULL, scale REAL NOT NULL,
                shift REAL NOT NULL, gain_u REAL NOT NULL, offset_u REAL NOT NULL, lowest REAL NOT NULL,
                highest REAL NOT NULL, lag_s REAL NOT NULL, PRIMARY KEY (version, idx)) STRICT, WITHOUT ROWID;
            CREATE TABLE gap (
                scan INTEGER NOT NULL, channel INTEGER NOT NULL, why TEXT, since_ns INTEGER,
                PRIMARY KEY (scan, channel)) STRICT, WITHOUT ROWID;
            CREATE TABLE orders (
                scan INTEGER PRIMARY KEY, kind TEXT NOT NULL CHECK (kind IN ('off', 'off_now', 'path')),
                way TEXT, through INTEGER, stage TEXT, amps REAL, volts REAL) STRICT;
            CREATE TABLE inbox (
                scan INTEGER PRIMARY KEY, stop INTEGER NOT NULL CHECK (stop IN (0, 1)),
                requests TEXT NOT NULL) STRICT;
            CREATE TABLE event (
                number INTEGER PRIMARY KEY, scan INTEGER NOT NULL, nanos INTEGER NOT NULL, kind TEXT NOT NULL,
                step INTEGER, words TEXT NOT NULL, ended_by TEXT, settled INTEGER CHECK (settled IN (0, 1)),
                account_ns INTEGER, in_nano_amp_s INTEGER, out_nano_amp_s INTEGER, in_micro_watt_s INTEGER,
                out_micro_watt_s INTEGER, micro_volt_s INTEGER, rule INTEGER, channel INTEGER, bound REAL,
                since_ns INTEGER, value REAL) STRICT;
            CREATE VIEW step AS
                SELECT b.step, b.words AS kind, b.scan AS begun_scan, b.nanos AS begun_ns,
                    e.scan AS ended_scan, e.nanos AS ended_ns, e.ended_by, e.settled
                FROM event b LEFT JOIN event e ON e.number = (
                    SELECT min(number) FROM event
                    WHERE number > b.number AND step = b.step AND kind = 'step_ended')
                WHERE b.kind = 'step_begun';
            """;

    private RunTables() {}

    /** All statements that make the tables and views, in order. */
    static List<String> create(List<Channel> channels, long originNanos) {
        StringBuilder scan = new StringBuilder("CREATE TABLE scan (number INTEGER PRIMARY KEY, "
                + "nanos INTEGER NOT NULL, fresh INTEGER NOT NULL, taken BLOB");
        StringBuilder plain = new StringBuilder("CREATE VIEW plain AS SELECT number, (nanos - ")
                .append(originNanos).append(") / 1e9 AS elapsed_s");
        for (Channel channel : channels) {
            scan.append(", ").append(column(channel.index())).append(" INTEGER");
            plain.append(", ").append(channel.shift()).append(" + ").append(column(channel.index()))
                    .append(" * ").append(channel.scale()).append(" AS \"")
                    .append(channel.name().replace("\"", "\"\"")).append('"');
        }
        return List.of(FIXED, scan.append(") STRICT").toString(), plain.append(" FROM scan").toString());
    }

    static String insertScan(int channels) {
        StringBuilder names = new StringBuilder("INSERT INTO scan (number, nanos, fresh, taken");
        StringBuilder marks = new StringBuilder("?, ?, ?, ?");
        for (int index = 0; index < channels; index++) {
            names.append(", ").append(column(index));
            marks.append(", ?");
        }
        return names.append(") VALUES (").append(marks).append(')').toString();
    }

    /** Name of a channel's column. */
    static String column(int index) {
        return index < 10 ? "c0" + index : "c" + index;
    }
}
