package rigwarden.findings;

import java.util.List;

/**
 * A step was broken off and went on later.
 *
 * @param outageSeconds from the last scan before to the moment at which it went on
 * @param amps current ordered when it was broken off, A, magnitude
 * @param afterSeconds how long the step then still ran, a wait before its current and pauses in it left out
 */
public record Break(double outageSeconds, double amps, double afterSeconds) {
    /** A recorder that lags longer trips, and the heartbeat stage lets go within a second (safety design, sections 1 and 4). */
    private static final double UNSEEN_SECONDS = 11;
    /** What may drain the cells unseen: meters, a balancer, their own discharge (project's assumption, generous). */
    private static final double DRAIN_C = 1e-3;
    /** What a rest lets a cell give more, when it comes right before the cut-off (project's assumption). */
    private static final double RECOVERED = 0.01;
    /** Time constant with which a cell under current forgets that it rested (project's assumption). */
    private static final double FORGETS_SECONDS = 1800;

    /** What the term is called that stands for what flowed unseen. */
    static final String UNSEEN = "unseen until it was open";

    /** Half of what may have flowed unseen until the contactor was open, Ah: in the charge of the step itself, whatever is made of it. */
    double halfUnseenAmpHours() {
        return amps * UNSEEN_SECONDS / 3600 / 2;
    }

    /** Anything from nothing to all of it, about that half (JCGM 100:2008, 4.3.7 and 4.3.8). */
    Budget.Term unseen() {
        return Budget.limits(UNSEEN, halfUnseenAmpHours());
    }

    /**
     * What else it adds to the uncertainty of a capacity, Ah.
     *
     * @param kind of the step that was broken off; a charge is made good by its own end, a discharge not
     * @param ratedAmpHours of a cell
     */
    List<Budget.Term> terms(String kind, double ratedAmpHours) {
        Budget.Term drained = Budget.limits("drained in the outage", DRAIN_C * ratedAmpHours * outageSeconds / 3600);
        return switch (kind) {
            case "charge" -> List.of();
            case "discharge", "heat_run" -> List.of(
                    drained,
                    Budget.limits("recovered by the rest", RECOVERED * ratedAmpHours * Math.exp(-afterSeconds / FORGETS_SECONDS)));
            case String _ -> List.of(drained);
        };
    }

    Break later(double seconds) {
        return new Break(outageSeconds, amps, afterSeconds + seconds);
    }
}
