package rigwarden.run;

import java.util.Arrays;

/**
 * Cell voltages once a minute over the last ten minutes of a rest.
 *
 * @param takenNanos times, oldest first
 * @param volts by mark, then by cell
 */
record Still(long[] takenNanos, double[][] volts) {
    private static final long MARK_NANOS = 60_000_000_000L;
    private static final int MARKS = 11;
    private static final double FLAT_LOW_V = 3.0;
    private static final double FLAT_HIGH_V = 3.40;
    private static final double FLAT_V = 0.001;
    private static final double STEEP_V = 0.010;

    static final Still EMPTY = new Still(new long[0], new double[0][]);

    boolean due(long nanos) {
        return takenNanos.length == 0 || nanos - takenNanos[takenNanos.length - 1] >= MARK_NANOS;
    }

    Still with(long nanos, double[] now) {
        int drop = takenNanos.length == MARKS ? 1 : 0;
        long[] times = Arrays.copyOfRange(takenNanos, drop, takenNanos.length + 1);
        double[][] values = Arrays.copyOfRange(volts, drop, volts.length + 1);
        times[times.length - 1] = nanos;
        values[values.length - 1] = now;
        return new Still(times, values);
    }

    /** Over ten minutes every cell moved less than 1 mV between 3.0 and 3.40 V, less than 10 mV outside. */
    boolean still() {
        if (takenNanos.length < MARKS) {
            return false;
        }
        for (int cell = 0; cell < volts[0].length; cell++) {
            double lowest = Double.MAX_VALUE;
            double highest = -Double.MAX_VALUE;
            for (double[] mark : volts) {
                lowest = Math.min(lowest, mark[cell]);
                highest = Math.max(highest, mark[cell]);
            }
            boolean flat = lowest >= FLAT_LOW_V && highest <= FLAT_HIGH_V;
            if (highest - lowest >= (flat ? FLAT_V : STEEP_V)) {
                return false;
            }
        }
        return true;
    }
}
