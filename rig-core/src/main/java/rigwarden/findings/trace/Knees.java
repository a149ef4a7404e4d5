package rigwarden.findings.trace;

import java.util.Arrays;

/**
 * At which charge each cell crossed which voltage in a step, near both ends: the knees by which cells are compared.
 *
 * @param emptying charge that had left the cells since the step began, Ah, by cell and level from {@link #EMPTY_FROM_VOLTS}
 *     downwards; NaN where the level was not crossed
 * @param filling charge that had gone in, Ah, by cell and level from {@link #FULL_FROM_VOLTS} upwards
 * @param endVolts last voltage of each cell under current
 * @param endAmpHours charge moved at that moment, signed, positive into the cells
 * @param endAmps current then, A, signed
 */
public record Knees(double[][] emptying, double[][] filling, double[] endVolts, double endAmpHours, double endAmps) {
    /** Highest level of the lower knee: a cell below it has left the flat under discharge. */
    public static final double EMPTY_FROM_VOLTS = 3.10;
    /** Lowest level of the upper knee: a cell above it has left the flat under gentle charge. */
    public static final double FULL_FROM_VOLTS = 3.42;
    /** Distance of the levels, V. */
    public static final double LEVEL_VOLTS = 0.01;
    private static final int EMPTY_LEVELS = 111;
    private static final int FULL_LEVELS = 29;

    /** What a step with so many cells begins with. */
    static Knees fresh(int cells) {
        double[][] low = new double[cells][EMPTY_LEVELS];
        double[][] high = new double[cells][FULL_LEVELS];
        for (int cell = 0; cell < cells; cell++) {
            Arrays.fill(low[cell], Double.NaN);
            Arrays.fill(high[cell], Double.NaN);
        }
        double[] end = new double[cells];
        Arrays.fill(end, Double.NaN);
        return new Knees(low, high, end, 0, 0);
    }

    /**
     * Of a step that was broken off and went on so. A level that a cell had met in the first part stands; a later one is counted on from that
     * part's charge.
     */
    public Knees then(Knees after) {
        double[][] low = new double[emptying.length][];
        double[][] high = new double[filling.length][];
        for (int cell = 0; cell < low.length; cell++) {
            low[cell] = met(emptying[cell], after.emptying[cell], -endAmpHours);
            high[cell] = met(filling[cell], after.filling[cell], endAmpHours);
        }
        boolean flowed = after.endAmps != 0;
        return new Knees(low, high, flowed ? after.endVolts : endVolts, endAmpHours + after.endAmpHours, flowed ? after.endAmps : endAmps);
    }

    private static double[] met(double[] first, double[] second, double movedAmpHours) {
        double[] both = new double[first.length];
        Arrays.setAll(both, level -> Double.isNaN(first[level]) ? second[level] + movedAmpHours : first[level]);
        return both;
    }

    /** Charge out, Ah, when this cell came down to a voltage on the lower knee; NaN where it did not, or was never above. */
    public double emptyAt(int cell, double volts) {
        return between(emptying[cell], (EMPTY_FROM_VOLTS - volts) / LEVEL_VOLTS);
    }

    /** Charge in, Ah, when this cell came up to a voltage on the upper knee; NaN likewise. */
    public double fullAt(int cell, double volts) {
        return between(filling[cell], (volts - FULL_FROM_VOLTS) / LEVEL_VOLTS);
    }

    private static double between(double[] crossed, double place) {
        int below = (int) Math.floor(place + 1e-9);
        if (below < 0 || below >= crossed.length) {
            return Double.NaN;
        }
        double share = Math.max(0, place - below);
        return below + 1 < crossed.length && !Double.isNaN(crossed[below + 1])
                ? crossed[below] + share * (crossed[below + 1] - crossed[below])
                : share < 1e-6 ? crossed[below] : Double.NaN;
    }
}
