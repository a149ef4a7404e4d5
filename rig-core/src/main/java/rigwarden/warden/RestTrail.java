package rigwarden.warden;

import java.util.Arrays;
import rigwarden.rig.Channel;

/**
 * Cell voltages and temperatures every five minutes over the last half hour with everything off.
 *
 * @param takenNanos times, oldest first
 * @param volts by mark, then by cell; a mark is only set when every cell, every body and the room are valid
 * @param celsius by mark, then by body; the room's last
 */
record RestTrail(long[] takenNanos, double[][] volts, double[][] celsius) {
    private static final long MARK_NANOS = 300_000_000_000L;
    private static final int MARKS = 7;

    static final RestTrail EMPTY = new RestTrail(new long[0], new double[0][], new double[0][]);

    RestTrail then(Scan scan, Reading[] readings, Places places) {
        boolean due = takenNanos.length == 0 || scan.nanos() - takenNanos[takenNanos.length - 1] >= MARK_NANOS;
        if (!due || !valid(readings, places.cells) || !valid(readings, places.bodies) || !valid(readings, places.room)) {
            return this;
        }
        double[] warmth = Arrays.copyOf(values(readings, places.bodies), places.bodies.length + 1);
        warmth[places.bodies.length] = values(readings, places.room)[0];
        int drop = takenNanos.length == MARKS ? 1 : 0;
        long[] times = Arrays.copyOfRange(takenNanos, drop, takenNanos.length + 1);
        times[times.length - 1] = scan.nanos();
        return new RestTrail(times, appended(volts, drop, values(readings, places.cells)), appended(celsius, drop, warmth));
    }

    private static boolean valid(Reading[] readings, Channel... channels) {
        for (Channel channel : channels) {
            if (!(readings[channel.index()] instanceof Reading.Valid)) {
                return false;
            }
        }
        return true;
    }

    private static double[] values(Reading[] readings, Channel... channels) {
        double[] values = new double[channels.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = ((Reading.Valid) readings[channels[i].index()]).value();
        }
        return values;
    }

    private static double[][] appended(double[][] marks, int drop, double[] fresh) {
        double[][] longer = Arrays.copyOfRange(marks, drop, marks.length + 1);
        longer[longer.length - 1] = fresh;
        return longer;
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

    /** How far each body warmed over it, K. */
    double[] bodyRises() {
        double[] rises = new double[celsius[0].length - 1];
        for (int i = 0; i < rises.length; i++) {
            rises[i] = celsius[MARKS - 1][i] - celsius[0][i];
        }
        return rises;
    }

    /** How far the room warmed over it, K. */
    double roomRise() {
        int room = celsius[0].length - 1;
        return celsius[MARKS - 1][room] - celsius[0][room];
    }
}
