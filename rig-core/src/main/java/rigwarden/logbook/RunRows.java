package rigwarden.logbook;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.stream.Collectors;
import rigwarden.warden.Inbox;
import rigwarden.warden.Reading;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;

/**
 * Turns cycles into rows. A bound value stays bound until it is replaced, so that a channel that repeats itself costs
 * neither a call nor a boxed number. The driver closes a statement that failed, so after a failure all are prepared anew.
 */
final class RunRows {
    private static final int FIRST_CODE = 5;

    private final RunFile file;
    private final int channels;
    private final Before now;
    private final Before committed;
    private Taken taken;
    private final boolean[] bound;
    private final long[] boundCode;
    private boolean broken;
    private PreparedStatement scans;
    private PreparedStatement gaps;
    private PreparedStatement orders;
    private PreparedStatement inboxes;
    private EventRows events;

    RunRows(RunFile file, int channels) throws SQLException {
        this.file = file;
        this.channels = channels;
        now = new Before(channels);
        committed = new Before(channels);
        bound = new boolean[channels];
        boundCode = new long[channels];
        prepare();
    }

    private void prepare() throws SQLException {
        taken = new Taken(channels);
        scans = file.prepare(RunTables.insertScan(channels));
        gaps = file.prepare("INSERT INTO gap VALUES (?, ?, ?, ?)");
        orders = file.prepare("INSERT INTO orders VALUES (?, ?, ?, ?, ?, ?, ?)");
        inboxes = file.prepare("INSERT INTO inbox VALUES (?, ?, ?)");
        events = new EventRows(file);
        for (int channel = 0; channel < channels; channel++) {
            if (now.valid[channel]) {
                scans.setLong(FIRST_CODE + channel, now.code[channel]);
            } else {
                scans.setNull(FIRST_CODE + channel, Types.INTEGER);
            }
            bound[channel] = now.valid[channel];
            boundCode[channel] = now.code[channel];
        }
        broken = false;
    }

    /** What was put so far is committed. */
    void keep() {
        committed.copy(now);
    }

    /** What was put since the last commit is gone, and a statement may have failed. */
    void back() {
        now.copy(committed);
        broken = true;
    }

    void put(Row row) throws SQLException {
        if (broken) {
            closeAll();
            prepare();
        }
        Scan scan = row.scan();
        List<Reading> readings = scan.readings();
        if (readings.size() != channels) {
            throw new IllegalStateException("scan " + scan.number() + " has " + readings.size() + " readings where the "
                    + "run file has " + channels + " channels");
        }
        long fresh = 0;
        taken.clear();
        for (int channel = 0; channel < channels; channel++) {
            switch (readings.get(channel)) {
                case Reading.Valid valid -> {
                    if (now.fresh(channel, valid)) {
                        fresh |= 1L << channel;
                        valid(scan, channel, valid);
                    }
                }
                case Reading.Failed failed -> {
                    if (now.began(channel, failed)) {
                        failed(scan, channel, failed);
                    }
                }
            }
        }
        scans.setLong(1, scan.number());
        scans.setLong(2, scan.nanos());
        scans.setLong(3, fresh);
        taken.bind(scans, 4);
        scans.executeUpdate();
        around(row);
    }

    /** What a person did beside the run. */
    void put(StoredEvent event) throws SQLException {
        if (broken) {
            closeAll();
            prepare();
        }
        events.put(event);
    }

    private void closeAll() throws SQLException {
        scans.close();
        gaps.close();
        orders.close();
        inboxes.close();
        events.close();
    }

    private void valid(Scan scan, int channel, Reading.Valid valid) throws SQLException {
        if (now.why[channel] != null) {
            gap(scan.number(), channel);
            gaps.setNull(3, Types.VARCHAR);
            gaps.setNull(4, Types.INTEGER);
            gaps.executeUpdate();
            now.why[channel] = null;
        }
        long offset = valid.takenNanos() - scan.nanos();
        taken.add(offset, offset != now.offset[channel]);
        now.offset[channel] = offset;
        now.taken[channel] = valid.takenNanos();
        now.code[channel] = valid.code();
        now.valid[channel] = true;
        bind(channel, valid.code());
    }

    private void bind(int channel, long code) throws SQLException {
        if (!bound[channel] || boundCode[channel] != code) {
            scans.setLong(FIRST_CODE + channel, code);
            bound[channel] = true;
            boundCode[channel] = code;
        }
    }

    private void failed(Scan scan, int channel, Reading.Failed failed) throws SQLException {
        gap(scan.number(), channel);
        gaps.setString(3, failed.why().name());
        gaps.setLong(4, failed.sinceNanos());
        gaps.executeUpdate();
        now.valid[channel] = false;
        now.why[channel] = failed.why();
        now.since[channel] = failed.sinceNanos();
        scans.setNull(FIRST_CODE + channel, Types.INTEGER);
        bound[channel] = false;
    }

    private void gap(long scan, int channel) throws SQLException {
        gaps.setLong(1, scan);
        gaps.setInt(2, channel);
    }

    private void around(Row row) throws SQLException {
        if (now.ordersChange(row.orders())) {
            order(row.scan().number(), StoredOrders.of(row.orders()));
        }
        Inbox inbox = row.inbox();
        if (inbox.stop() || !inbox.requests().isEmpty()) {
            inboxes.setLong(1, row.scan().number());
            inboxes.setInt(2, inbox.stop() ? 1 : 0);
            inboxes.setString(3, inbox.requests().stream().map(Request::name).collect(Collectors.joining(" ")));
            inboxes.executeUpdate();
        }
        if (!row.events().isEmpty()) {
            events.put(row.scan(), row.events());
        }
    }

    private void order(long scan, StoredOrders stored) throws SQLException {
        orders.setLong(1, scan);
        orders.setString(2, stored.kind());
        switch (stored) {
            case StoredOrders.Off _ -> {
                orders.setNull(3, Types.VARCHAR);
                orders.setNull(4, Types.INTEGER);
                orders.setNull(5, Types.VARCHAR);
                orders.setNull(6, Types.REAL);
                orders.setNull(7, Types.REAL);
            }
            case StoredOrders.Path path -> {
                orders.setString(3, path.way().name());
                orders.setInt(4, path.through());
                orders.setString(5, path.stage().name());
                orders.setDouble(6, path.amps());
                orders.setDouble(7, path.volts());
            }
        }
        orders.executeUpdate();
    }
}
