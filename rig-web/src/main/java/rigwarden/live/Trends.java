package rigwarden.live;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** How much each channel changed over the last minute: one value a second is kept. */
final class Trends {
    private static final int SECONDS = 60;
    private static final long SECOND = 1_000_000_000L;

    private final double[][] kept = new double[SECONDS][];
    private int next;
    private long due = Long.MIN_VALUE;

    void take(Scan scan) {
        if (scan.nanos() < due) {
            return;
        }
        due = scan.nanos() + SECOND;
        double[] values = new double[scan.readings().size()];
        for (int channel = 0; channel < values.length; channel++) {
            values[channel] = value(scan.readings().get(channel));
        }
        kept[next] = values;
        next = (next + 1) % SECONDS;
    }

    private static double value(Reading reading) {
        return reading instanceof Reading.Valid valid ? valid.value() : Double.NaN;
    }

    /** Change by channel over the minute before this scan; none before the minute is over, or without a valid end. */
    List<OptionalDouble> over(Scan scan) {
        double[] before = kept[next];
        if (before == null) {
            OptionalDouble[] none = new OptionalDouble[scan.readings().size()];
            Arrays.fill(none, OptionalDouble.empty());
            return List.of(none);
        }
        OptionalDouble[] change = new OptionalDouble[before.length];
        for (int channel = 0; channel < change.length; channel++) {
            double by = value(scan.readings().get(channel)) - before[channel];
            change[channel] = Double.isNaN(by) ? OptionalDouble.empty() : OptionalDouble.of(by);
        }
        return List.of(change);
    }
}
