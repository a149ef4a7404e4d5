package rigwarden.findings.trace;

/** Keeps for how long current flowed in a step, what it was after its first minute, and how warm the cells were under it: a step may wait first, and pause. */
public final class UnderCurrent {
    private static final long MINUTE = 60_000_000_000L;

    private final double leastAmps;
    private final Mean all = new Mean();
    private final Mean flowing = new Mean();
    private long nanos;
    private long sinceNanos;
    private double startAmps;
    private boolean flows;

    /**
     * Before a step.
     *
     * @param leastAmps current from which on one flows, A, either way; NaN where that is not known, and then none ever does
     */
    public UnderCurrent(double leastAmps) {
        this.leastAmps = leastAmps;
    }

    /** A step begins. */
    public void begin() {
        all.clear();
        flowing.clear();
        nanos = 0;
        startAmps = 0;
        flows = false;
    }

    /**
     * Takes the current of a scan.
     *
     * @param amps A, signed
     * @param now monotonic time of the scan
     * @param last that of the scan before: the time between is time under current where it flows now
     */
    public void take(double amps, long now, long last) {
        flows = Math.abs(amps) >= leastAmps;
        if (flows) {
            sinceNanos = nanos == 0 ? now : sinceNanos;
            nanos += now - last;
            startAmps = now - sinceNanos <= MINUTE ? amps : startAmps;
        }
    }

    /** A reading of a cell's body in that scan, °C. */
    public void warmth(double celsius) {
        all.add(celsius);
        if (flows) {
            flowing.add(celsius);
        }
    }

    /** Time under current. */
    public long nanos() {
        return nanos;
    }

    /** Current after its first minute, or the last of a shorter one, A; 0 where none flowed. */
    public double startAmps() {
        return startAmps;
    }

    /** Mean of the bodies under the current, or over all of a step without any, °C; NaN where none was read. */
    public double meanCelsius() {
        return (nanos > 0 ? flowing : all).value();
    }

    private static final class Mean {
        private double sum;
        private long readings;

        void add(double value) {
            sum += value;
            readings++;
        }

        void clear() {
            sum = 0;
            readings = 0;
        }

        double value() {
            return readings == 0 ? Double.NaN : sum / readings;
        }
    }
}
