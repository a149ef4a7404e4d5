package rigwarden.findings;

import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.ZeroWatch.Stretch;

/**
 * The current's zero over a step, as the shunt showed it with the contactor open before and after.
 *
 * @param amps mean of both
 * @param standardAmps standard uncertainty: scatter, half a code, and that it went from the one to the other in a way that nobody saw
 */
record Zero(double amps, double standardAmps) {
    /** A step's mark and its contact are so far apart at most. */
    private static final long NEAR_NANOS = 10_000_000_000L;

    /**
     * Around a step: of itself where the contactor was open through most of it, else of the last stretch before and the first after.
     *
     * @param stepAmps of one code
     */
    static Optional<Zero> around(List<Stretch> stretches, long beganNanos, long endedNanos, double stepAmps) {
        for (Stretch own : stretches) {
            long within = Math.min(own.endedNanos(), endedNanos) - Math.max(own.beganNanos(), beganNanos);
            if (2 * within > endedNanos - beganNanos) {
                return Optional.of(between(own, own, stepAmps));
            }
        }
        Optional<Stretch> before = stretches.stream().filter(s -> s.endedNanos() <= beganNanos + NEAR_NANOS).reduce((_, last) -> last);
        Optional<Stretch> after = stretches.stream().filter(s -> s.beganNanos() >= endedNanos - NEAR_NANOS).findFirst();
        return before.flatMap(b -> after.map(a -> between(b, a, stepAmps)));
    }

    private static Zero between(Stretch before, Stretch after, double stepAmps) {
        double moved = after.amps() - before.amps();
        double scatter = before.scatterAmps() * before.scatterAmps() / before.rows() + after.scatterAmps() * after.scatterAmps() / after.rows();
        return new Zero((before.amps() + after.amps()) / 2, Math.sqrt(scatter / 4 + (moved * moved + stepAmps * stepAmps) / 12));
    }
}
