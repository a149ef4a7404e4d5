package rigwarden.logbook;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import rigwarden.rig.Channel;
import rigwarden.warden.Inbox;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;

/** All cycles of a run file in order, one at a time in memory. Close it when done. */
public final class Cycles implements Iterator<Cycle>, AutoCloseable {
    private final ScanRows scans;
    private final Rows orders;
    private final Rows inboxes;
    private final Rows events;
    private StoredOrders inForce = StoredOrders.OFF;

    Cycles(Connection connection, List<Channel> channels) throws SQLException {
        scans = new ScanRows(connection, channels);
        orders = new Rows(connection, OrdersRows.SELECT + " ORDER BY scan");
        inboxes = new Rows(connection, "SELECT scan, stop, requests FROM inbox ORDER BY scan");
        events = new Rows(connection, EventRows.SELECT);
    }

    @Override
    public boolean hasNext() {
        return scans.there();
    }

    /** The next cycle; throws {@link LogbookException} where the file is damaged. */
    @Override
    public Cycle next() {
        if (!hasNext()) {
            throw new NoSuchElementException("the run file has no more scans");
        }
        try {
            Scan scan = scans.next();
            Inbox inbox = inbox(scan.number());
            while (orders.upTo(scan.number())) {
                inForce = OrdersRows.read(orders.row());
                orders.next();
            }
            return new Cycle(scan, inbox, inForce, events(scan.number()));
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be read on", e);
        }
    }

    private Inbox inbox(long scan) throws SQLException {
        if (!inboxes.upTo(scan)) {
            return Inbox.EMPTY;
        }
        ResultSet row = inboxes.row();
        List<Request> requests = new ArrayList<>();
        String words = row.getString(3);
        if (!words.isEmpty()) {
            for (String word : words.split(" ", -1)) {
                requests.add(Request.valueOf(word));
            }
        }
        Inbox inbox = new Inbox(row.getInt(2) == 1, List.copyOf(requests));
        inboxes.next();
        return inbox;
    }

    private List<StoredEvent> events(long scan) throws SQLException {
        if (!events.upTo(scan)) {
            return List.of();
        }
        List<StoredEvent> found = new ArrayList<>();
        while (events.upTo(scan)) {
            found.add(EventRows.read(events.row()));
            events.next();
        }
        return List.copyOf(found);
    }

    @Override
    public void close() {
        try (scans; orders; inboxes; events) {
            inForce = StoredOrders.OFF;
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be closed", e);
        }
    }
}
