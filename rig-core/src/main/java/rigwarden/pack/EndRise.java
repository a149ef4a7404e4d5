package rigwarden.pack;

/**
 * How a resistance rises towards the ends of charge:
 * 1 + atEmpty·e^(−s/emptyWidth) + atFull·e^(−(1−s)/fullWidth).
 *
 * @param atEmpty rise at s = 0, in multiples of the middle
 * @param emptyWidth in units of charge, above 0
 * @param atFull rise at s = 1
 * @param fullWidth in units of charge, above 0
 */
public record EndRise(double atEmpty, double emptyWidth, double atFull, double fullWidth) {
    /** The same resistance at every charge. */
    public static final EndRise NONE = new EndRise(0, 1, 0, 1);

    /** The factor at a state of charge; beyond ±0.05 past the ends it rises no more. */
    public double factor(double charge) {
        double s = Math.clamp(charge, -0.05, 1.05);
        return 1 + atEmpty * Math.exp(-s / emptyWidth) + atFull * Math.exp((s - 1) / fullWidth);
    }
}
