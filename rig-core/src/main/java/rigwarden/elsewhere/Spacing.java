package rigwarden.elsewhere;

import java.util.Arrays;

/** How far apart rows usually are: counts of their distances in bins of 5 %, so that memory does not grow with the log. */
final class Spacing {
    private static final double SHORTEST_SECONDS = 1e-4;
    private static final double BIN = Math.log(1.05);
    private static final int BINS = 450;
    /** Nine distances in ten are no longer than the usual. */
    private static final double MOST = 0.9;
    /** A distance of so many usual ones has a gap in it. */
    private static final double GAP = 1.5;

    private final long[] bins = new long[BINS];
    private final double[] greatest = new double[BINS];

    void take(double seconds) {
        if (seconds > 0) {
            int bin = Math.clamp((long) (Math.log(seconds / SHORTEST_SECONDS) / BIN), 0, BINS - 1);
            bins[bin]++;
            greatest[bin] = Math.max(greatest[bin], seconds);
        }
    }

    void take(Spacing other) {
        for (int i = 0; i < BINS; i++) {
            bins[i] += other.bins[i];
            greatest[i] = Math.max(greatest[i], other.greatest[i]);
        }
    }

    /** Distances until now. */
    long count() {
        return Arrays.stream(bins).sum();
    }

    /** The usual distance, s; 0 with none. */
    double usual() {
        long all = count();
        long below = 0;
        for (int i = 0; i < BINS; i++) {
            below += bins[i];
            if (below > 0 && below >= MOST * all) {
                return greatest[i];
            }
        }
        return 0;
    }

    /** How many rows further a row is than the one before: more than one after a gap. */
    static long rows(double seconds, double usual) {
        return usual > 0 && seconds > GAP * usual ? Math.max(2, Math.round(seconds / usual)) : 1;
    }
}
