package rigwarden.rig;

/**
 * What a calibrated reading may be wrong by: the line's own doubt, and what the reference brought with it. About its pivot a
 * line's height and slope err independently (JCGM 100:2008, H.3.5), so that no covariance is left to carry.
 *
 * @param pivot corrected reading about which the line turns, in the channel's unit
 * @param heightU standard uncertainty of the line there, in the channel's unit
 * @param slopeU standard uncertainty of its slope, relative
 * @param scaleLimits reference meter's part that grows with what it shows, limits ±, relative
 * @param zeroLimits reference meter's part that does not, limits ±, in the channel's unit
 * @param certificateU standard uncertainty of a shunt's certificate, relative; 0 without one
 * @param lowest corrected reading of the lowest point
 * @param highest of the highest
 * @param beyondLimits what the channel's scale may be off by where the calibration no longer reaches, limits ±, relative
 */
public record Doubt(double pivot, double heightU, double slopeU, double scaleLimits, double zeroLimits, double certificateU,
        double lowest, double highest, double beyondLimits) {
    /** So many spans from a span's far end the line may still be drawn on without a term of its own. */
    public static final double REACH = 3;
    private static final double RECTANGULAR = Math.sqrt(3);
    private static final double FACTOR = 2;

    public Doubt {
        if (!(heightU >= 0) || !(slopeU >= 0) || !(scaleLimits >= 0) || !(zeroLimits >= 0) || !(certificateU >= 0)
                || !(beyondLimits >= 0) || !(highest > lowest) || !Double.isFinite(pivot)) {
            throw new IllegalArgumentException("not the doubt of a calibration: pivot " + pivot + ", " + lowest + "…" + highest);
        }
    }

    /** Lowest reading that needs no term of its own. */
    public double reachLow() {
        return highest - REACH * (highest - lowest);
    }

    /** Highest reading that needs no term of its own. */
    public double reachHigh() {
        return lowest + REACH * (highest - lowest);
    }

    /** Standard uncertainty of the line alone at a reading, in the channel's unit. */
    public double line(double reading) {
        return Math.hypot(heightU, slopeU * (reading - pivot));
    }

    /** What a reading far from the points may be off by besides, limits ±, in the channel's unit; 0 within reach. */
    public double beyond(double reading) {
        double away = Math.max(0, Math.max(reading - reachHigh(), reachLow() - reading));
        return beyondLimits * away;
    }

    /** Expanded uncertainty (k = 2) at a reading, in the channel's unit. */
    public double expanded(double reading) {
        double line = line(reading);
        double scale = scaleLimits * reading / RECTANGULAR;
        double zero = zeroLimits / RECTANGULAR;
        double certificate = certificateU * reading;
        double beyond = beyond(reading) / RECTANGULAR;
        return FACTOR * Math.sqrt(line * line + scale * scale + zero * zero + certificate * certificate + beyond * beyond);
    }

    /** Expanded uncertainty that grows with the reading, relative; with {@link #offsetU} never less than the true one within reach. */
    public double gainU() {
        double scale = scaleLimits / RECTANGULAR;
        return FACTOR * Math.sqrt(2 * slopeU * slopeU + scale * scale + certificateU * certificateU);
    }

    /** Expanded uncertainty that does not, in the channel's unit. */
    public double offsetU() {
        double zero = zeroLimits / RECTANGULAR;
        return FACTOR * Math.sqrt(heightU * heightU + 2 * slopeU * slopeU * pivot * pivot + zero * zero);
    }
}
