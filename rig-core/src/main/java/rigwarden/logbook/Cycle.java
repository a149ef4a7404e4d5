package rigwarden.logbook;

import java.util.List;
import rigwarden.warden.Inbox;
import rigwarden.warden.Scan;

/**
 * One cycle read back.
 *
 * @param scan equal to the scan that was offered
 * @param inbox what people wanted in it
 * @param orders granted from it
 * @param events in the order in which they happened
 */
public record Cycle(Scan scan, Inbox inbox, StoredOrders orders, List<StoredEvent> events) {}
