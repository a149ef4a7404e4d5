package rigwarden.loop;

import java.util.List;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** Where everything that the core read and said goes. */
public interface Recorder {
    /** Takes one cycle's record. Never blocks, never throws; how far it lags is a reading of the next scan. */
    void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events);
}
