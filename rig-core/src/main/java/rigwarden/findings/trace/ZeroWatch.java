package rigwarden.findings.trace;

import java.util.ArrayList;
import java.util.List;

/** Stretches over which the contactor was seen open: no current flows then, and what the shunt reads is its zero. */
public final class ZeroWatch {
    /** What is read while a contact opens, and a filter's rest of it, is left out for so long, s (project's assumption). */
    private static final double SETTLES_SECONDS = 2;
    /** A shorter stretch tells no zero (project's assumption). */
    private static final double LEAST_SECONDS = 30;
    private static final int LEAST_ROWS = 20;

    private final double mostAmps;
    private final List<Stretch> found = new ArrayList<>();
    private boolean open;
    private long openedNanos;
    private long lastNanos;
    private double sum;
    private double squares;
    private long rows;

    /**
     * One stretch.
     *
     * @param beganNanos when it was first seen open
     * @param endedNanos when it was last seen open
     * @param amps mean reading
     * @param scatterAmps standard deviation of one reading
     * @param rows readings
     */
    public record Stretch(long beganNanos, long endedNanos, double amps, double scatterAmps, long rows) {}

    /**
     * Of a shunt.
     *
     * @param mostAmps no zero is as large, A: it is a current, whatever the contactor's switch says
     */
    public ZeroWatch(double mostAmps) {
        this.mostAmps = mostAmps;
    }

    public void take(Numbers now) {
        if (!now.opened || Math.abs(now.amps) > mostAmps) {
            close();
            return;
        }
        if (!open) {
            open = true;
            openedNanos = now.nanos;
        }
        lastNanos = now.nanos;
        if (!Double.isNaN(now.amps) && now.nanos - openedNanos >= SETTLES_SECONDS * 1e9) {
            sum += now.amps;
            squares += now.amps * now.amps;
            rows++;
        }
    }

    private void close() {
        stretch();
        open = false;
        sum = 0;
        squares = 0;
        rows = 0;
    }

    private void stretch() {
        if (open && rows >= LEAST_ROWS && lastNanos - openedNanos >= LEAST_SECONDS * 1e9) {
            double mean = sum / rows;
            double variance = Math.max(0, squares / rows - mean * mean) * rows / (rows - 1);
            found.add(new Stretch(openedNanos, lastNanos, mean, Math.sqrt(variance), rows));
        }
    }

    /** All until now, in their order; the last may still go on. */
    public List<Stretch> found() {
        int closed = found.size();
        stretch();
        List<Stretch> all = List.copyOf(found);
        found.subList(closed, found.size()).clear();
        return all;
    }
}
