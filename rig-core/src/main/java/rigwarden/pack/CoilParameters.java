package rigwarden.pack;

/**
 * Coils, contacts and the heartbeat stage that feeds them.
 *
 * @param closeNanos from coil on to contact closed, not negative
 * @param openNanos from coil off to contact open, not negative
 * @param holdSeconds from the last heartbeat edge to the drop-out, 0.6 to 1.0
 * @param edges how many edges, each at most {@code edgeGapSeconds} after the one before, bring the stage to life
 * @param edgeGapSeconds see {@code edges}
 */
public record CoilParameters(long closeNanos, long openNanos, double holdSeconds, int edges, double edgeGapSeconds) {
    public CoilParameters {
        if (closeNanos < 0 || openNanos < 0 || !(holdSeconds >= 0.6 && holdSeconds <= 1.0)) {
            throw new IllegalArgumentException("lags from 0 ns, hold 0.6 to 1.0 s: " + holdSeconds);
        }
    }

    /** 30 ms to close, 15 ms to open, 0.8 s hold, three edges at most 0.5 s apart (assumptions). */
    public static CoilParameters usual() {
        return new CoilParameters(30_000_000, 15_000_000, 0.8, 3, 0.5);
    }
}
