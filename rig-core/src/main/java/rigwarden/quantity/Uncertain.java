package rigwarden.quantity;

/**
 * A value with its expanded uncertainty.
 *
 * @param value in the unit that the holder's name states
 * @param expanded half width at a coverage of 95.45 %, same unit, never negative
 */
public record Uncertain(double value, double expanded) {
    public Uncertain {
        if (!Double.isFinite(value) || !(expanded >= 0)) {
            throw new IllegalArgumentException("not a measured value: " + value + " ± " + expanded);
        }
    }

    /** Whether a reference value lies inside the interval. */
    public boolean covers(double reference) {
        return Math.abs(reference - value) <= expanded;
    }
}
