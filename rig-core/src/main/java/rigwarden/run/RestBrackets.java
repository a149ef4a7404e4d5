package rigwarden.run;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;
import rigwarden.rig.Rig;
import rigwarden.warden.Scan;

/**
 * Follows a run and knows at each scan between which voltages its cells would come to rest if everything opened now.
 *
 * <p>After a discharge a cell only rises, and not above where it rested before, since charge has left it; after a charge the
 * other way round. A cell that has rested for ten minutes moves in the next half hour by no more than three times as much
 * as in those ten minutes. On the flat part of a cell's curve this tells little about its charge; it finds another cell, one
 * that was emptied or filled across a knee, and one that was moved out of the rest that it had come to.
 */
final class RestBrackets {
    private static final long MARK_NANOS = 60_000_000_000L;
    private static final int MARKS = 11;
    private static final double MORE_TIMES = 3;
    /** Noise, and a few kelvins of cooling: the same channel reads both times, so that its own error falls out. */
    private static final double NEAR_V = 0.005;
    /** A cell of which nothing is known before the run. */
    private static final double UNKNOWN_V = 0.050;

    private final Sight sight;
    private final double[] low;
    private final double[] high;
    private final Deque<double[]> marks = new ArrayDeque<>();
    private long markedNanos = Long.MIN_VALUE;
    private double[] now = new double[0];
    private boolean resting;
    private boolean charged;
    private boolean discharged;

    RestBrackets(Rig rig) {
        sight = new Sight(rig);
        low = new double[rig.cells().series()];
        high = new double[rig.cells().series()];
        Arrays.fill(low, Double.NaN);
    }

    /** Takes the next scan; one without every cell is passed over. */
    void take(Scan scan) {
        if (!sight.whole(scan)) {
            return;
        }
        now = sight.volts(scan);
        boolean first = Double.isNaN(low[0]);
        for (int cell = 0; first && cell < now.length; cell++) {
            low[cell] = now[cell] - UNKNOWN_V;
            high[cell] = now[cell] + UNKNOWN_V;
        }
        if (sight.noCurrent(scan)) {
            rest(scan.nanos());
        } else {
            flow(sight.amps(scan) > 0);
        }
    }

    private void rest(long nanos) {
        if (!resting) {
            marks.clear();
            resting = true;
            markedNanos = Long.MIN_VALUE;
        }
        if (markedNanos == Long.MIN_VALUE || nanos - markedNanos >= MARK_NANOS) {
            markedNanos = nanos;
            marks.addLast(now);
            if (marks.size() > MARKS) {
                marks.removeFirst();
            }
        }
        for (int cell = 0; cell < now.length; cell++) {
            low[cell] = discharged ? Math.min(now[cell], high[cell]) : low[cell];
            high[cell] = charged ? Math.max(now[cell], low[cell]) : high[cell];
        }
        if (marks.size() == MARKS) {
            double[] then = marks.getFirst();
            for (int cell = 0; cell < now.length; cell++) {
                double more = MORE_TIMES * (now[cell] - then[cell]);
                low[cell] = now[cell] + Math.min(0, more);
                high[cell] = now[cell] + Math.max(0, more);
            }
        }
    }

    /** What is under load is the one end, where it rested before the other. */
    private void flow(boolean charging) {
        resting = false;
        charged = charging;
        discharged = !charging;
        for (int cell = 0; cell < now.length; cell++) {
            if (charging) {
                high[cell] = Math.max(now[cell], low[cell]);
            } else {
                low[cell] = Math.min(now[cell], high[cell]);
            }
        }
    }

    /** By cell; nothing before the first whole scan. */
    List<Bracket> brackets() {
        return IntStream.range(0, now.length)
                .mapToObj(cell -> new Bracket(low[cell] - NEAR_V, high[cell] + NEAR_V))
                .toList();
    }
}
