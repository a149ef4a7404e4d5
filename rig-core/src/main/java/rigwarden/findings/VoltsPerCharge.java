package rigwarden.findings;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * dV/dQ of a slow charge or discharge: mean voltage in bins of charge, one row at a time, so that a reading's steps are averaged out
 * before anything is divided.
 */
public final class VoltsPerCharge {
    private static final int LEAST_ROWS = 5;
    private static final double OUTER_SHARE = 0.1;
    private static final int AROUND = 4;

    private final double binAmpHours;
    private final double[] volts;
    private final int[] rows;
    private int last = -1;

    /**
     * Bins from no charge on.
     *
     * @param binAmpHours width of each, Ah
     * @param bins how many; what moves beyond them is left out
     */
    public VoltsPerCharge(double binAmpHours, int bins) {
        this.binAmpHours = binAmpHours;
        volts = new double[bins];
        rows = new int[bins];
    }

    /** The next row: voltage, and charge moved until then, Ah, either way. */
    public void take(double volt, double movedAmpHours) {
        int bin = (int) Math.floor(Math.abs(movedAmpHours) / binAmpHours);
        if (bin < volts.length) {
            volts[bin] += volt;
            rows[bin]++;
            last = Math.max(last, bin);
        }
    }

    /** Charge between a bin and the next, Ah. */
    public double ampHours(int bin) {
        return (bin + 1) * binAmpHours;
    }

    /** Slope between the middles of a bin and the next, V/Ah, as a magnitude; NaN where either has too few rows. */
    public double[] perAmpHour() {
        double[] slopes = new double[Math.max(0, last)];
        Arrays.setAll(slopes, i -> rows[i] < LEAST_ROWS || rows[i + 1] < LEAST_ROWS ? Double.NaN
                : Math.abs(volts[i + 1] / rows[i + 1] - volts[i] / rows[i]) / binAmpHours);
        return slopes;
    }

    /**
     * Between which bins the curve is steeper than around them, where one plateau goes over into the next: the steepest first, two at
     * most. The outermost parts are left out, where it bends by itself; none on a curve too short.
     */
    public List<Integer> steepest() {
        double[] slopes = perAmpHour();
        int from = Math.max(AROUND, (int) (OUTER_SHARE * slopes.length));
        int to = Math.min(slopes.length - AROUND, (int) ((1 - OUTER_SHARE) * slopes.length));
        return IntStream.range(from, Math.max(from, to)).filter(i -> IntStream.rangeClosed(i - AROUND, i + AROUND)
                .allMatch(other -> other == i || slopes[other] < slopes[i])).boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -slopes[i])).limit(2).toList();
    }
}
