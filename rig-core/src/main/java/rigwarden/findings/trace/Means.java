package rigwarden.findings.trace;

import java.util.Arrays;

/**
 * Keeps means of several columns over spans of one length, each with the mean time of the rows that made it: rows that are farther
 * apart than a span, and gaps, keep their times. When there are too many points the span doubles, and neighbours nearer than it become one.
 */
final class Means {
    private final int most;
    private final long firstSpanNanos;
    private final double[][] kept;
    private final double[] hours;
    private final double[] sum;
    private final int[] count;
    private double hourSum;
    private long rows;
    private int points;
    private long spanNanos;
    private long beganNanos;
    private long sinceNanos;
    private long lastNanos;

    /**
     * Of so many columns.
     *
     * @param most points that are kept
     * @param firstSpanNanos span until there are so many
     */
    Means(int columns, int most, long firstSpanNanos) {
        this.most = most;
        this.firstSpanNanos = firstSpanNanos;
        kept = new double[columns][most];
        hours = new double[most];
        sum = new double[columns];
        count = new int[columns];
    }

    void begin(long nanos) {
        points = 0;
        spanNanos = firstSpanNanos;
        beganNanos = nanos;
        sinceNanos = nanos;
        lastNanos = nanos;
        clear();
    }

    private void clear() {
        Arrays.fill(sum, 0);
        Arrays.fill(count, 0);
        hourSum = 0;
        rows = 0;
    }

    /** A row; NaN where a column has none. What came before a gap is a point of its own. */
    void take(long nanos, double[] values) {
        if (rows > 0 && nanos - lastNanos > spanNanos) {
            close();
            sinceNanos = lastNanos;
        }
        for (int i = 0; i < sum.length; i++) {
            if (!Double.isNaN(values[i])) {
                sum[i] += values[i];
                count[i]++;
            }
        }
        hourSum += (nanos - beganNanos) / 3600e9;
        rows++;
        lastNanos = nanos;
        if (nanos - sinceNanos >= spanNanos) {
            sinceNanos += spanNanos * ((nanos - sinceNanos) / spanNanos);
            close();
        }
    }

    private void close() {
        for (int i = 0; i < sum.length; i++) {
            kept[i][points] = count[i] == 0 ? Double.NaN : sum[i] / count[i];
        }
        hours[points] = hourSum / rows;
        points++;
        clear();
        while (points == most) {
            thin();
        }
    }

    private void thin() {
        spanNanos *= 2;
        int to = 0;
        int from = 0;
        while (from < points) {
            boolean near = from + 1 < points && hours[from + 1] - hours[from] <= spanNanos / 3600e9;
            int other = near ? from + 1 : from;
            for (double[] column : kept) {
                column[to] = (column[from] + column[other]) / 2;
            }
            hours[to] = (hours[from] + hours[other]) / 2;
            to++;
            from = other + 1;
        }
        points = to;
    }

    /** Times of the points, h since the beginning. */
    double[] hours() {
        return Arrays.copyOf(hours, points);
    }

    /** Means of a column at those times; NaN where it had no reading. */
    double[] column(int index) {
        return Arrays.copyOf(kept[index], points);
    }
}
