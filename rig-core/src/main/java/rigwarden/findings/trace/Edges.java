package rigwarden.findings.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rigwarden.findings.number.StraightLine;

/**
 * Finds steps of the current in a run: it stood still for a second, and then it is another. Of each step of the programme so many are
 * kept; where there are more, the first, the last ones and ever fewer of those between.
 */
public final class Edges {
    private static final int RING = 20;
    private static final int LEAST = 5;
    private static final int MOST_A_STEP = 64;
    private static final int LAST = 16;
    /** Rows that are kept after an edge. */
    private static final int TRAIL = 10;
    /** The rows before must agree so well, relative and A. */
    private static final double STILL = 0.02;
    private static final double STILL_AMPS = 0.1;
    /** And the next must differ by so much. */
    private static final double STEPS = 0.05;
    private static final double STEPS_AMPS = 1;

    private final int cells;
    private final double[] amps = new double[RING];
    private final long[] nanos = new long[RING];
    private final double[][] volts = new double[RING][];
    private final List<Edge> found = new ArrayList<>();
    private int filled;
    private int firstOfStep;
    private long dropped;
    private int step;
    private String kind = "";
    private Edge pending;
    private long sinceNanos;
    private int delay;

    public Edges(int cells) {
        this.cells = cells;
        for (int i = 0; i < RING; i++) {
            volts[i] = new double[cells];
        }
    }

    public void begun(int number, String word) {
        firstOfStep = found.size();
        step = number;
        kind = word;
    }

    public void take(Numbers now) {
        if (Double.isNaN(now.amps)) {
            return;
        }
        if (pending != null) {
            after(now);
        }
        if (filled >= LEAST && still() && stepped(now.amps)) {
            close();
            pending = begin(now);
            sinceNanos = now.nanos;
            delay = 0;
            filled = 0;
        } else if (filled > 0 && !near(now.amps)) {
            filled = 0;
        }
        push(now);
    }

    private void push(Numbers now) {
        if (filled == RING) {
            double[] oldest = volts[0];
            System.arraycopy(amps, 1, amps, 0, RING - 1);
            System.arraycopy(nanos, 1, nanos, 0, RING - 1);
            System.arraycopy(volts, 1, volts, 0, RING - 1);
            volts[RING - 1] = oldest;
            filled--;
        }
        amps[filled] = now.amps;
        nanos[filled] = now.nanos;
        System.arraycopy(now.volts, 0, volts[filled], 0, cells);
        filled++;
    }

    private boolean near(double next) {
        return Math.abs(next - amps[filled - 1]) < STILL * Math.abs(amps[filled - 1]) + STILL_AMPS;
    }

    private boolean still() {
        return Math.abs(amps[filled - 1] - amps[0]) < STILL * Math.abs(amps[0]) + STILL_AMPS;
    }

    private boolean stepped(double next) {
        double last = amps[filled - 1];
        return Math.abs(next - last) > Math.max(STEPS_AMPS, STEPS * Math.max(Math.abs(last), Math.abs(next)));
    }

    /** The last row before may have been read while the contact already moved: the lines go through those before it. */
    private Edge begin(Numbers now) {
        int rows = filled - 1;
        double[] seconds = new double[rows];
        for (int i = 0; i < rows; i++) {
            seconds[i] = (nanos[i] - nanos[filled - 1]) * 1e-9;
        }
        double[] at = new double[cells];
        double[] noise = new double[cells];
        double[] slope = new double[cells];
        for (int cell = 0; cell < cells; cell++) {
            double[] heights = new double[rows];
            for (int i = 0; i < rows; i++) {
                heights[i] = volts[i][cell];
            }
            boolean whole = Arrays.stream(heights).noneMatch(Double::isNaN) && seconds[0] < seconds[rows - 1];
            StraightLine line = whole ? StraightLine.through(seconds, heights, 0) : null;
            at[cell] = line == null ? Double.NaN : line.height();
            noise[cell] = line == null ? Double.NaN : line.residual();
            slope[cell] = line == null ? Double.NaN : line.slope();
        }
        return new Edge(step, kind, now.scan, new Edge.Moment(0, 0, before(seconds), at), noise, rows - 2, new ArrayList<>(), slope,
                new ArrayList<>(List.of(new Edge.Moment(0, 0, now.amps, now.volts.clone()))));
    }

    /** A load of constant power takes more with every row, so that a mean would be a second old. */
    private double before(double[] seconds) {
        double[] rows = Arrays.copyOf(amps, seconds.length);
        return seconds[0] < seconds[seconds.length - 1] ? StraightLine.through(seconds, rows, 0).height()
                : Arrays.stream(rows).average().orElseThrow();
    }

    private void after(Numbers now) {
        double seconds = (now.nanos - sinceNanos) * 1e-9;
        boolean moved = !pending.after().isEmpty()
                && Math.abs(now.amps - pending.after().getFirst().amps()) > STILL * Math.abs(pending.before().amps()) + STILL_AMPS;
        if (moved) {
            close();
            return;
        }
        if (pending.trail().size() < TRAIL) {
            pending.trail().add(new Edge.Moment(seconds, seconds, now.amps, now.volts.clone()));
        }
        while (delay < Edge.DELAYS.length && seconds >= Edge.DELAYS[delay] - 1e-3) {
            if (seconds <= 1.5 * Edge.DELAYS[delay] + 0.1) {
                pending.after().add(new Edge.Moment(seconds, Edge.DELAYS[delay], now.amps, now.volts.clone()));
            }
            delay++;
        }
        if (delay == Edge.DELAYS.length) {
            close();
        }
    }

    private void close() {
        if (pending != null && !pending.after().isEmpty()) {
            found.add(new Edge(pending.step(), pending.kind(), pending.scan(), pending.before(), pending.noiseVolts(), pending.freedom(),
                    List.copyOf(pending.after()), pending.fallVoltsPerSecond(), List.copyOf(pending.trail())));
            if (found.size() - firstOfStep > MOST_A_STEP) {
                thin();
            }
        }
        pending = null;
    }

    /** Every second of those before the last ones goes. */
    private void thin() {
        for (int i = found.size() - LAST - 1; i > firstOfStep; i -= 2) {
            found.remove(i);
            dropped++;
        }
    }

    /** Steps of the current that were seen and not kept. */
    public long dropped() {
        return dropped;
    }

    public List<Edge> found() {
        List<Edge> all = new ArrayList<>(found);
        if (pending != null && !pending.after().isEmpty()) {
            all.add(pending);
        }
        return List.copyOf(all);
    }
}
