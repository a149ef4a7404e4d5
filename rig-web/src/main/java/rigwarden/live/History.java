package rigwarden.live;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * The whole run in bounded memory. When the buckets are used up each two neighbours become one, which keeps the lowest and
 * the highest of both. One thread takes, any thread draws.
 */
public final class History {
    static final int BUCKETS = 2048;
    private static final long FIRST_WIDTH_NANOS = 100_000_000L;

    private final List<Channel> channels;
    private final double[][] low;
    private final double[][] high;
    private long originNanos;
    private long widthNanos = FIRST_WIDTH_NANOS;
    private int used;

    History(List<Channel> all) {
        channels = all.stream().filter(History::drawn).toList();
        low = new double[channels.size()][BUCKETS];
        high = new double[channels.size()][BUCKETS];
        for (int line = 0; line < low.length; line++) {
            Arrays.fill(low[line], Double.NaN);
            Arrays.fill(high[line], Double.NaN);
        }
    }

    /** Whether a channel has a place on the charts. */
    public static boolean drawn(Channel channel) {
        Quantity quantity = channel.quantity();
        boolean measured = quantity == Quantity.VOLTAGE || quantity == Quantity.CURRENT
                || quantity == Quantity.TEMPERATURE;
        return measured && !channel.role().ofInstrument();
    }

    synchronized void take(Scan scan) {
        if (used == 0) {
            originNanos = scan.nanos();
        }
        int bucket = bucket(scan);
        used = Math.max(used, bucket + 1);
        for (int line = 0; line < low.length; line++) {
            if (scan.readings().get(channels.get(line).index()) instanceof Reading.Valid valid) {
                low[line][bucket] = lower(low[line][bucket], valid.value());
                high[line][bucket] = higher(high[line][bucket], valid.value());
            }
        }
    }

    private int bucket(Scan scan) {
        while ((scan.nanos() - originNanos) / widthNanos >= BUCKETS) {
            for (int line = 0; line < low.length; line++) {
                halve(low[line], true);
                halve(high[line], false);
            }
            used = (used + 1) / 2;
            widthNanos *= 2;
        }
        return (int) Math.max(0, (scan.nanos() - originNanos) / widthNanos);
    }

    private static void halve(double[] values, boolean lowest) {
        for (int i = 0; i < BUCKETS / 2; i++) {
            double first = values[2 * i];
            double second = values[2 * i + 1];
            values[i] = lowest ? lower(first, second) : higher(first, second);
        }
        Arrays.fill(values, BUCKETS / 2, BUCKETS, Double.NaN);
    }

    static double lower(double one, double other) {
        return Double.isNaN(one) ? other : Double.isNaN(other) ? one : Math.min(one, other);
    }

    static double higher(double one, double other) {
        return Double.isNaN(one) ? other : Double.isNaN(other) ? one : Math.max(one, other);
    }

    /** Width of a bucket now, s: a finer look needs the run file. */
    public synchronized double widthSeconds() {
        return widthNanos * 1e-9;
    }

    /** Everything so far, in at most so many buckets (1 or more). */
    public Trace trace(int most) {
        double[][] lows;
        double[][] highs;
        int count;
        long width;
        synchronized (this) {
            count = used;
            width = widthNanos;
            lows = copies(low);
            highs = copies(high);
        }
        int join = Math.max(1, (count + most - 1) / Math.max(1, most));
        int buckets = (count + join - 1) / join;
        double[] seconds = new double[buckets];
        for (int i = 0; i < buckets; i++) {
            seconds[i] = (double) i * join * width * 1e-9;
        }
        List<Trace.Line> lines = new ArrayList<>();
        for (int line = 0; line < lows.length; line++) {
            lines.add(new Trace.Line(channels.get(line), joined(lows[line], join, buckets, true),
                    joined(highs[line], join, buckets, false)));
        }
        return new Trace(seconds, List.copyOf(lines));
    }

    private double[][] copies(double[][] from) {
        double[][] copies = new double[from.length][];
        for (int line = 0; line < from.length; line++) {
            copies[line] = Arrays.copyOf(from[line], used);
        }
        return copies;
    }

    private static double[] joined(double[] values, int join, int buckets, boolean lowest) {
        double[] joined = new double[buckets];
        Arrays.fill(joined, Double.NaN);
        for (int i = 0; i < values.length; i++) {
            double before = joined[i / join];
            joined[i / join] = lowest ? lower(before, values[i]) : higher(before, values[i]);
        }
        return joined;
    }
}
