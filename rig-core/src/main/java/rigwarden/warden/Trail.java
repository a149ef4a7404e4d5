package rigwarden.warden;

import java.util.Arrays;
import rigwarden.rig.Channel;

/**
 * Every temperature once in ten seconds, for the last two minutes, so that a rise can be told from noise.
 *
 * @param takenNanos time of each entry, oldest first
 * @param celsius by entry, then by channel index; NaN inside this package only, where a channel had no valid reading
 */
record Trail(long[] takenNanos, double[][] celsius) {
    static final long STEP_NANOS = 10_000_000_000L;
    private static final int KEPT = 13;

    static final Trail EMPTY = new Trail(new long[0], new double[0][]);

    boolean due(long nanos) {
        return takenNanos.length == 0 || nanos - takenNanos[takenNanos.length - 1] >= STEP_NANOS;
    }

    Trail with(Scan scan, Channel[] temperatures) {
        double[] now = new double[scan.readings().size()];
        Arrays.fill(now, Double.NaN);
        for (Channel channel : temperatures) {
            if (scan.readings().get(channel.index()) instanceof Reading.Valid valid) {
                now[channel.index()] = valid.value();
            }
        }
        int drop = takenNanos.length == KEPT ? 1 : 0;
        int kept = takenNanos.length - drop;
        long[] times = Arrays.copyOfRange(takenNanos, drop, takenNanos.length + 1);
        double[][] values = Arrays.copyOfRange(celsius, drop, celsius.length + 1);
        times[kept] = scan.nanos();
        values[kept] = now;
        return new Trail(times, values);
    }

    /**
     * Rise of a channel over the last entries: the least of three looks, without the newest and without the oldest entry
     * too, so that one false reading is no rise.
     *
     * @param entries how many steps of ten seconds to look back, at least 2
     * @return kelvin per minute; 0 where the trail is shorter or has a hole
     */
    double risePerMinute(int channel, int entries) {
        int last = takenNanos.length - 1;
        int first = last - entries;
        if (first < 0) {
            return 0;
        }
        double whole = rate(channel, first, last);
        return Math.min(whole, Math.min(rate(channel, first, last - 1), rate(channel, first + 1, last)));
    }

    private double rate(int channel, int from, int to) {
        double kelvin = celsius[to][channel] - celsius[from][channel];
        double minutes = (takenNanos[to] - takenNanos[from]) / 60e9;
        return Double.isNaN(kelvin) ? 0 : kelvin / minutes;
    }
}
