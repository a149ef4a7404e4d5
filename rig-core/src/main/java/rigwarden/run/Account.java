package rigwarden.run;

/**
 * Exact integer sums over a step. Whole numbers add in any order to the same sum, so that streaming equals batch, and a
 * later correction of gain or offset is a multiplication of these sums, not a new integration.
 *
 * @param nanos time covered
 * @param inNanoAmpSeconds charge into the cells, nA·s
 * @param outNanoAmpSeconds charge out of them, nA·s, positive
 * @param inMicroWattSeconds energy into the cells at their studs, µW·s
 * @param outMicroWattSeconds energy out of them, µW·s, positive
 * @param microVoltSeconds sum of cell volts over time, µV·s
 */
public record Account(
        long nanos,
        long inNanoAmpSeconds,
        long outNanoAmpSeconds,
        long inMicroWattSeconds,
        long outMicroWattSeconds,
        long microVoltSeconds) {
    public static final Account EMPTY = new Account(0, 0, 0, 0, 0, 0);

    /**
     * Adds the time from the scan before to this one, by the trapezoid of the ends.
     *
     * @param forNanos the time between them
     * @param amps mean current, A, positive into the cells
     * @param watts mean power at the studs, W, positive into the cells
     * @param volts mean sum of the cells, V
     */
    public Account plus(long forNanos, double amps, double watts, double volts) {
        double seconds = forNanos * 1e-9;
        long charge = Math.round(amps * seconds * 1e9);
        long energy = Math.round(watts * seconds * 1e6);
        return new Account(
                nanos + forNanos,
                inNanoAmpSeconds + Math.max(charge, 0),
                outNanoAmpSeconds - Math.min(charge, 0),
                inMicroWattSeconds + Math.max(energy, 0),
                outMicroWattSeconds - Math.min(energy, 0),
                microVoltSeconds + Math.round(volts * seconds * 1e6));
    }

    /** Both together. */
    public Account plus(Account other) {
        return new Account(nanos + other.nanos, inNanoAmpSeconds + other.inNanoAmpSeconds,
                outNanoAmpSeconds + other.outNanoAmpSeconds, inMicroWattSeconds + other.inMicroWattSeconds,
                outMicroWattSeconds + other.outMicroWattSeconds, microVoltSeconds + other.microVoltSeconds);
    }

    /** What is left of this sum when a part of it is taken off. */
    public Account minus(Account part) {
        return new Account(nanos - part.nanos, inNanoAmpSeconds - part.inNanoAmpSeconds,
                outNanoAmpSeconds - part.outNanoAmpSeconds, inMicroWattSeconds - part.inMicroWattSeconds,
                outMicroWattSeconds - part.outMicroWattSeconds, microVoltSeconds - part.microVoltSeconds);
    }

    /** Net charge, Ah, positive into the cells. */
    public double ampHours() {
        return (inNanoAmpSeconds - outNanoAmpSeconds) / 3600e9;
    }

    /** Net energy, Wh, positive into the cells. */
    public double wattHours() {
        return (inMicroWattSeconds - outMicroWattSeconds) / 3600e6;
    }
}
