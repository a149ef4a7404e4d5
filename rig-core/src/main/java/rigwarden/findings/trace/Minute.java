package rigwarden.findings.trace;

import java.util.Arrays;
import java.util.Optional;

/** Means over ten seconds of the loose probe, the fixed ones and the current's square. */
final class Minute {
    static final long SPAN_NANOS = 10_000_000_000L;

    /**
     * Ten seconds.
     *
     * @param loose mean of the loose probe, °C; NaN where it had no reading
     * @param celsius means of the fixed probes, in their order; NaN likewise
     * @param squareAmps mean of the current's square, A²
     */
    record Bin(long firstScan, long lastScan, long beganNanos, long endedNanos, double loose, double[] celsius, double squareAmps) {}

    private final double[] sums;
    private final int[] counts;
    private double looseSum;
    private int looseCount;
    private double squareSum;
    private int squareCount;
    private long firstScan;
    private long beganNanos = -1;

    Minute(int places) {
        sums = new double[places];
        counts = new int[places];
    }

    /** The bin that is full with this scan, if one is. */
    Optional<Bin> take(Numbers now) {
        if (beganNanos < 0) {
            clear(now);
        }
        for (int i = 0; i < sums.length; i++) {
            if (!Double.isNaN(now.celsius[i])) {
                sums[i] += now.celsius[i];
                counts[i]++;
            }
        }
        if (!Double.isNaN(now.loose)) {
            looseSum += now.loose;
            looseCount++;
        }
        if (!Double.isNaN(now.amps)) {
            squareSum += now.amps * now.amps;
            squareCount++;
        }
        if (now.nanos - beganNanos < SPAN_NANOS) {
            return Optional.empty();
        }
        double[] means = new double[sums.length];
        Arrays.setAll(means, i -> sums[i] / counts[i]);
        Bin full = new Bin(firstScan, now.scan, beganNanos, now.nanos, looseSum / looseCount, means, squareSum / squareCount);
        clear(now);
        return Optional.of(full);
    }

    private void clear(Numbers now) {
        Arrays.fill(sums, 0);
        Arrays.fill(counts, 0);
        looseSum = 0;
        looseCount = 0;
        squareSum = 0;
        squareCount = 0;
        firstScan = now.scan;
        beganNanos = now.nanos;
    }
}
