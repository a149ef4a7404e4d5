package rigwarden.findings.trace;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Keeps a rest's hourly means. */
public final class RestWatch {
    private static final double SPAN_HOURS = 1;

    private final double[][] volts;
    private final double[] sum;
    private final int[] count;
    private double span = SPAN_HOURS;
    private int points;
    private long sinceNanos;

    public RestWatch(int cells) {
        volts = new double[cells][RestTrail.MOST];
        sum = new double[cells];
        count = new int[cells];
    }

    public void begin(Numbers now) {
        sinceNanos = now.nanos;
        points = 0;
        span = SPAN_HOURS;
        Arrays.fill(sum, 0);
        Arrays.fill(count, 0);
    }

    public void take(Numbers now) {
        for (int cell = 0; cell < sum.length; cell++) {
            if (!Double.isNaN(now.volts[cell])) {
                sum[cell] += now.volts[cell];
                count[cell]++;
            }
        }
        if (now.nanos - sinceNanos >= span * 3600e9) {
            for (int cell = 0; cell < sum.length; cell++) {
                volts[cell][points] = count[cell] == 0 ? Double.NaN : sum[cell] / count[cell];
            }
            points++;
            sinceNanos += Math.round(span * 3600e9);
            Arrays.fill(sum, 0);
            Arrays.fill(count, 0);
            if (points == RestTrail.MOST) {
                halve();
            }
        }
    }

    private void halve() {
        for (double[] cell : volts) {
            for (int i = 0; i < points / 2; i++) {
                cell[i] = (cell[2 * i] + cell[2 * i + 1]) / 2;
            }
        }
        points /= 2;
        span *= 2;
    }

    public RestTrail end() {
        double each = span;
        return new RestTrail(IntStream.range(0, points).mapToDouble(i -> (i + 0.5) * each).toArray(),
                Arrays.stream(volts).map(cell -> Arrays.copyOf(cell, points)).toArray(double[][]::new));
    }
}
