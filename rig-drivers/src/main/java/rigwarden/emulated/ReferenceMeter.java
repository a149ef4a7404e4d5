package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * A reference meter somewhere within its statement: its scale and its zero are off by one draw each, and what it shows is rounded
 * to its digit after half a count of its own.
 */
public final class ReferenceMeter {
    private final double scale;
    private final double zero;
    private final double digit;
    private final Chance chance;

    /**
     * One meter.
     *
     * @param relativeLimits of its scale, limits ±, relative
     * @param zeroLimits of its zero, limits ±, in its unit
     * @param digit worth of one count, in its unit
     * @param seed of the meter
     */
    public ReferenceMeter(double relativeLimits, double zeroLimits, double digit, long seed) {
        scale = relativeLimits * (2 * Chance.of(seed, "reference meter", "scale").nextDouble() - 1);
        zero = zeroLimits * (2 * Chance.of(seed, "reference meter", "zero").nextDouble() - 1);
        this.digit = digit;
        chance = Chance.of(seed, "reference meter", "reading");
    }

    /** What it shows of a true value. */
    public double shows(double truth) {
        double wavering = digit * (chance.nextDouble() - 0.5);
        return digit * Math.rint((truth * (1 + scale) + zero + wavering) / digit);
    }
}
