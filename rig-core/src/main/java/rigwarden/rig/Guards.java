package rigwarden.rig;

import java.util.List;

/**
 * The hardware layer that works with the computer dead.
 *
 * @param heartbeatShortest shortest hold of the heartbeat stage after its last edge, s
 * @param heartbeatLongest longest hold, s
 * @param loopContacts names of the normally-closed contacts in the loop
 * @param latching whether the loop stays open until a person resets it
 * @param windowHighVolts independent hardware window per cell, V; 0 when none is fitted
 * @param windowLowVolts its lower edge, V; 0 when none
 * @param contactLagSeconds longest time from coil off to contact open, s
 * @param trips where the warden trips on this rig
 */
public record Guards(
        double heartbeatShortest,
        double heartbeatLongest,
        List<String> loopContacts,
        boolean latching,
        double windowHighVolts,
        double windowLowVolts,
        double contactLagSeconds,
        Trips trips) {

    /** Guards with nothing moved inward. */
    public Guards(double heartbeatShortest, double heartbeatLongest, List<String> loopContacts, boolean latching,
            double windowHighVolts, double windowLowVolts, double contactLagSeconds) {
        this(heartbeatShortest, heartbeatLongest, loopContacts, latching, windowHighVolts, windowLowVolts, contactLagSeconds,
                Trips.WIDEST);
    }

    public boolean windowFitted() {
        return windowHighVolts > 0 && windowLowVolts > 0;
    }
}
