package rigwarden.findings.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import rigwarden.rig.Channel;

/** Keeps means of the temperatures over equal spans; when there are too many, two become one and the span doubles. */
public final class WarmthWatch {
    private static final int MOST = 240;
    private static final long FIRST_SPAN_NANOS = 10_000_000_000L;

    private final List<Channel> places;
    private final double[][] celsius;
    private final double[] squares = new double[MOST];
    private final double[] sum;
    private final int[] count;
    private final double[] first;
    private final double[] amps = new double[MOST];
    private double ampSum;
    private double squareSum;
    private long rows;
    private int points;
    private long spanNanos;
    private long sinceNanos;

    public WarmthWatch(List<Channel> places) {
        this.places = places;
        celsius = new double[places.size()][MOST];
        sum = new double[places.size()];
        count = new int[places.size()];
        first = new double[places.size()];
    }

    public void begin(Numbers now) {
        points = 0;
        spanNanos = FIRST_SPAN_NANOS;
        sinceNanos = now.nanos;
        System.arraycopy(now.celsius, 0, first, 0, first.length);
        clear();
    }

    private void clear() {
        Arrays.fill(sum, 0);
        Arrays.fill(count, 0);
        ampSum = 0;
        squareSum = 0;
        rows = 0;
    }

    public void take(Numbers now) {
        for (int i = 0; i < sum.length; i++) {
            if (!Double.isNaN(now.celsius[i])) {
                sum[i] += now.celsius[i];
                count[i]++;
            }
        }
        if (!Double.isNaN(now.amps)) {
            ampSum += now.amps;
            squareSum += now.amps * now.amps;
            rows++;
        }
        if (now.nanos - sinceNanos >= spanNanos) {
            for (int i = 0; i < sum.length; i++) {
                celsius[i][points] = count[i] == 0 ? Double.NaN : sum[i] / count[i];
            }
            amps[points] = rows == 0 ? Double.NaN : ampSum / rows;
            squares[points] = rows == 0 ? Double.NaN : squareSum / rows;
            points++;
            sinceNanos += spanNanos * ((now.nanos - sinceNanos) / spanNanos);
            clear();
            if (points == MOST) {
                halve();
            }
        }
    }

    private void halve() {
        for (int i = 0; i < points / 2; i++) {
            for (double[] place : celsius) {
                place[i] = (place[2 * i] + place[2 * i + 1]) / 2;
            }
            amps[i] = (amps[2 * i] + amps[2 * i + 1]) / 2;
            squares[i] = (squares[2 * i] + squares[2 * i + 1]) / 2;
        }
        points /= 2;
        spanNanos *= 2;
    }

    public List<Warmth> end() {
        double hour = spanNanos / 3600e9;
        double[] hours = IntStream.range(0, points).mapToDouble(i -> (i + 0.5) * hour).toArray();
        List<Warmth> all = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            all.add(new Warmth(places.get(i), first[i], hours, Arrays.copyOf(celsius[i], points),
                    Arrays.copyOf(amps, points),
                    Arrays.copyOf(squares, points)));
        }
        return all;
    }
}
