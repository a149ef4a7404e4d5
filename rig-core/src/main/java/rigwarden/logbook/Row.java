package rigwarden.logbook;

import java.util.List;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** One cycle as it waits to be written; {@code offeredNanos} in real time, whatever clock the run is on. */
record Row(Scan scan, Inbox inbox, Orders orders, List<Event> events, long offeredNanos) {
    boolean weighty() {
        for (Event event : events) {
            if (event.weighty()) {
                return true;
            }
        }
        return false;
    }
}
