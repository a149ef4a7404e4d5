package rigwarden.warden;

/**
 * Proof that this scan was healthy. Only the warden can make one; it is good for one scan, within its ceilings, once.
 */
public final class Lease {
    private final long scan;
    private final double chargeAmps;
    private final double dischargeAmps;
    private final boolean steady;
    private boolean spent;

    Lease(long scan, double chargeAmps, double dischargeAmps, boolean steady) {
        this.steady = steady;
        this.scan = scan;
        this.chargeAmps = chargeAmps;
        this.dischargeAmps = dischargeAmps;
    }

    /** Number of the scan that it was made from. */
    public long scan() {
        return scan;
    }

    /** Highest current that this scan allows in a way, A. */
    public double ceilingAmps(Way way) {
        return way == Way.CHARGE ? chargeAmps : dischargeAmps;
    }

    /** Whether no breach is on its way to a trip: only then may a path begin or its contact close. */
    public boolean steady() {
        return steady;
    }

    /** Takes the one use that a lease has; false when it is gone. */
    boolean spend() {
        boolean mine = !spent;
        spent = true;
        return mine;
    }
}
