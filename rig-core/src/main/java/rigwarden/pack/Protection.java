package rigwarden.pack;

/**
 * The battery's own protection, in the path at B− behind the shunt, and its balancer.
 *
 * <p>A cell above the high limit for the delay: no charge flows in any more, until all are below the release; discharge
 * still does. Likewise below the low limit. Temperature and current limits of its own are left out (assumption).
 *
 * @param highVolts of any cell, at its studs
 * @param highDelaySeconds not negative
 * @param highReleaseVolts below {@code highVolts}
 * @param lowVolts of any cell, at its studs
 * @param lowDelaySeconds not negative
 * @param lowReleaseVolts above {@code lowVolts}
 * @param ohms of its switch, not negative
 * @param balanceAboveVolts a cell above it loses {@code balanceAmps} past the shunt
 * @param balanceAmps 0 for no balancer
 */
public record Protection(double highVolts, double highDelaySeconds, double highReleaseVolts, double lowVolts,
        double lowDelaySeconds, double lowReleaseVolts, double ohms, double balanceAboveVolts, double balanceAmps) {
    /** No protection: no resistance, and it never opens. */
    public static final Protection NONE = new Protection(Double.POSITIVE_INFINITY, 0, 0, Double.NEGATIVE_INFINITY, 0,
            0, 0, 0, 0);

    public Protection {
        if (!(highReleaseVolts < highVolts && lowReleaseVolts > lowVolts && lowVolts < highVolts)) {
            throw new IllegalArgumentException("a protection releases inside its limits, and low is below high");
        }
        if (!(highDelaySeconds >= 0 && lowDelaySeconds >= 0 && ohms >= 0 && balanceAmps >= 0)) {
            throw new IllegalArgumentException("delays, resistance and balance current are not negative");
        }
    }

    /**
     * Opens at 3.65 V and 2.45 V, both after 2 s, closes at 3.50 V and 2.90 V; 1 mΩ; 60 mA above 3.50 V, for tests that
     * want one; all assumptions.
     */
    public static Protection usual() {
        return new Protection(3.65, 2, 3.50, 2.45, 2, 2.90, 1e-3, 3.50, 0.06);
    }

    /** Whether there is a switch that could open. */
    boolean present() {
        return Double.isFinite(highVolts) || Double.isFinite(lowVolts);
    }

    /** The same with limits moved and the releases moved with them. */
    Protection withLimits(double high, double low) {
        return new Protection(high, highDelaySeconds, high - highVolts + highReleaseVolts, low, lowDelaySeconds,
                low - lowVolts + lowReleaseVolts, ohms, balanceAboveVolts, balanceAmps);
    }

    /** The same with another balancer. */
    Protection withBalancer(double amps, double aboveVolts) {
        return new Protection(highVolts, highDelaySeconds, highReleaseVolts, lowVolts, lowDelaySeconds,
                lowReleaseVolts, ohms, aboveVolts, amps);
    }
}
