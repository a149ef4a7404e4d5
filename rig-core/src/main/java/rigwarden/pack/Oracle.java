package rigwarden.pack;

/** What the truth has been through since the last reset: the judge of every rule, and itself no rule. */
public final class Oracle {
    private static final double CURRENT_A = 1;

    private double highestVolts = -Double.MAX_VALUE;
    private double lowestVolts = Double.MAX_VALUE;
    private double hottestCelsius = -Double.MAX_VALUE;
    private String hottestPlace = "";
    private long lastCurrentNanos = Long.MIN_VALUE;
    private long overVoltsNanos = Long.MAX_VALUE;
    private long overCelsiusNanos = Long.MAX_VALUE;
    private double watchVolts = Double.MAX_VALUE;
    private double watchCelsius = Double.MAX_VALUE;

    Oracle() {}

    Oracle(Oracle other) {
        highestVolts = other.highestVolts;
        lowestVolts = other.lowestVolts;
        hottestCelsius = other.hottestCelsius;
        hottestPlace = other.hottestPlace;
        lastCurrentNanos = other.lastCurrentNanos;
        overVoltsNanos = other.overVoltsNanos;
        overCelsiusNanos = other.overCelsiusNanos;
        watchVolts = other.watchVolts;
        watchCelsius = other.watchCelsius;
    }

    /** Remembers from now when a cell first went over these volts, or a body over these degrees. */
    public void watch(double cellVolts, double bodyCelsius) {
        watchVolts = cellVolts;
        watchCelsius = bodyCelsius;
        overVoltsNanos = Long.MAX_VALUE;
        overCelsiusNanos = Long.MAX_VALUE;
    }

    void cell(double volts, double celsius, long nanos) {
        highestVolts = Math.max(highestVolts, volts);
        lowestVolts = Math.min(lowestVolts, volts);
        if (volts > watchVolts && overVoltsNanos == Long.MAX_VALUE) {
            overVoltsNanos = nanos;
        }
        if (celsius > watchCelsius && overCelsiusNanos == Long.MAX_VALUE) {
            overCelsiusNanos = nanos;
        }
        node(celsius, "body");
    }

    void node(double celsius, String place) {
        if (celsius > hottestCelsius) {
            hottestCelsius = celsius;
            hottestPlace = place;
        }
    }

    void current(double amps, long nanos) {
        if (Math.abs(amps) > CURRENT_A) {
            lastCurrentNanos = nanos;
        }
    }

    public double highestVolts() {
        return highestVolts;
    }

    public double lowestVolts() {
        return lowestVolts;
    }

    public double hottestCelsius() {
        return hottestCelsius;
    }

    public String hottestPlace() {
        return hottestPlace;
    }

    /** Last instant with more than 1 A, either way; {@link Long#MIN_VALUE} if there was none. */
    public long lastCurrentNanos() {
        return lastCurrentNanos;
    }

    /** First instant, to a step, above the watched volts; {@link Long#MAX_VALUE} if there was none. */
    public long overVoltsNanos() {
        return overVoltsNanos;
    }

    /** First instant, to a step, above the watched degrees; {@link Long#MAX_VALUE} if there was none. */
    public long overCelsiusNanos() {
        return overCelsiusNanos;
    }
}
