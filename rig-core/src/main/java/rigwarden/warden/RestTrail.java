package rigwarden.warden;

import java.util.Arrays;
import rigwarden.rig.Channel;

/**
 * Cell voltages every five minutes over the last half hour with everything off.
 *
 * @param takenNanos times, oldest first
 * @param volts by mark, then by cell; a mark is only set when every cell is valid
 */
record RestTrail(long[] takenNanos, double[][] volts) {
    private static final long MARK_NANOS = 300_000_000_000L;
    private static final int MARKS = 7;

    static final RestTrail EMPTY = new RestTrail(new long[0], new double[0][]);

    RestTrail then(Scan scan, Reading[] readings, Channel[] cells) {
        if (takenNanos.length > 0 && scan.nanos() - takenNanos[takenNanos.length - 1] < MARK_NANOS) {
            return this;
        }
        double[] now = new double[cells.length];
        for (int i = 0; i < cells.length; i++) {
            if (!(readings[cells[i].index()] instanceof Reading.Valid valid)) {
                return this;
            }
            now[i] = valid.value();
        }
        int drop = takenNanos.length == MARKS ? 1 : 0;
        long[] times = Arrays.copyOfRange(takenNanos, drop, takenNanos.length + 1);
        double[][] values = Arrays.copyOfRange(volts, drop, volts.length + 1);
        times[times.length - 1] = scan.nanos();
        values[values.length - 1] = now;
        return new RestTrail(times, values);
    }

    /** Whether half an hour is there. */
    boolean whole() {
        return takenNanos.length == MARKS;
    }

    /** How far each cell fell over it, V. */
    double[] falls() {
        double[] falls = new double[volts[0].length];
        for (int i = 0; i < falls.length; i++) {
            falls[i] = volts[0][i] - volts[MARKS - 1][i];
        }
        return falls;
    }
}
