package rigwarden.pack;

import java.util.Arrays;

/** The battery's protection at work: two directions, each let through or blocked, and the balancer's currents. */
final class ProtectionSwitch {
    private static final double NANOS = 1e9;

    private Protection p;
    private boolean chargeBlocked;
    private boolean dischargeBlocked;
    private long highNanos = Long.MAX_VALUE;
    private long lowNanos = Long.MAX_VALUE;
    private long openedNanos;
    private final double[] balanceAmps;

    ProtectionSwitch(Protection p, int cells) {
        this.p = p;
        balanceAmps = new double[cells];
    }

    ProtectionSwitch(ProtectionSwitch other) {
        p = other.p;
        chargeBlocked = other.chargeBlocked;
        dischargeBlocked = other.dischargeBlocked;
        highNanos = other.highNanos;
        lowNanos = other.lowNanos;
        openedNanos = other.openedNanos;
        balanceAmps = other.balanceAmps.clone();
    }

    void set(double highVolts, double lowVolts) {
        if (!p.present()) {
            throw new IllegalArgumentException("this battery has no protection that could be set");
        }
        p = p.withLimits(highVolts, lowVolts);
    }

    void balancer(double amps, double aboveVolts) {
        p = p.withBalancer(amps, aboveVolts);
        Arrays.fill(balanceAmps, 0);
    }

    /** Opens if a delay is over. */
    void aim(long nanos) {
        if (highNanos <= nanos) {
            openedNanos = nanos;
            chargeBlocked = true;
            highNanos = Long.MAX_VALUE;
        }
        if (lowNanos <= nanos) {
            openedNanos = nanos;
            dischargeBlocked = true;
            lowNanos = Long.MAX_VALUE;
        }
    }

    /** Looks at the cells; true if a delay began or ended, or a direction was released, never as soon as it opened. */
    boolean saw(double highest, double lowest, long nanos) {
        if (!p.present()) {
            return false;
        }
        boolean releasesHigh = chargeBlocked && nanos > openedNanos && highest < p.highReleaseVolts();
        boolean releasesLow = dischargeBlocked && nanos > openedNanos && lowest > p.lowReleaseVolts();
        chargeBlocked &= !releasesHigh;
        dischargeBlocked &= !releasesLow;
        boolean high = !chargeBlocked && highest > p.highVolts();
        boolean low = !dischargeBlocked && lowest < p.lowVolts();
        boolean turned = high != (highNanos != Long.MAX_VALUE) || low != (lowNanos != Long.MAX_VALUE);
        highNanos = due(high, highNanos, nanos, p.highDelaySeconds());
        lowNanos = due(low, lowNanos, nanos, p.lowDelaySeconds());
        return releasesHigh || releasesLow || turned;
    }

    private static long due(boolean beyond, long now, long nanos, double delaySeconds) {
        if (!beyond) {
            return Long.MAX_VALUE;
        }
        return now != Long.MAX_VALUE ? now : nanos + Math.round(delaySeconds * NANOS);
    }

    /** Turns the balancer on and off, cell by cell. */
    void balance(double[] cellVolts) {
        if (p.balanceAmps() > 0) {
            for (int k = 0; k < balanceAmps.length; k++) {
                balanceAmps[k] = cellVolts[k] > p.balanceAboveVolts() ? p.balanceAmps() : 0;
            }
        }
    }

    /** What the balancer takes from a cell at its studs, past the shunt. */
    double balanceAmps(int cell) {
        return balanceAmps[cell];
    }

    boolean chargeBlocked() {
        return chargeBlocked;
    }

    boolean dischargeBlocked() {
        return dischargeBlocked;
    }

    double ohms() {
        return p.ohms();
    }

    /** When a delay is over, or the end of time. */
    long dueNanos() {
        return Math.min(highNanos, lowNanos);
    }
}
