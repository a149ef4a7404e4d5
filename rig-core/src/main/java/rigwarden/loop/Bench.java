package rigwarden.loop;

import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** The hardware, as far as the loop knows it. */
public interface Bench {
    /** Takes a scan. Never throws: a failure is a reading. */
    Scan take();

    /**
     * Carries out orders, the Off parts first, each tried whatever became of the others.
     *
     * @return true when every part went out without an error
     */
    boolean apply(Orders orders);

    /** Toggles the heartbeat once. */
    void beat(Lease lease);
}
