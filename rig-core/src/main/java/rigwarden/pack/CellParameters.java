package rigwarden.pack;

/**
 * What a cell is like. Values of {@link #lfp105()} with their sources stand there.
 *
 * @param nominalAmpHours what 1 C means, from the label
 * @param ampHours charge between s = 0 and s = 1
 * @param startHysteresis −1 after a long discharge to +1 after a long charge
 * @param openCircuit open-circuit voltage
 * @param ohms resistance at once, at the studs, 25 °C, mid charge
 * @param fastOhms resistance of the fast relaxation
 * @param fastSeconds its time constant
 * @param slowOhms resistance of the slow relaxation
 * @param slowSeconds its time constant
 * @param fastRise rise of the first two resistances towards the ends
 * @param slowRise rise of the slow one
 * @param coldKelvin exponent of the resistances below 25 °C
 * @param warmKelvin exponent above 25 °C
 * @param hysteresisVolts half the gap between charge and discharge
 * @param hysteresisRate how fast it turns, in units of 1/s of charge
 * @param tabOhms the part of {@code ohms} that lies in each stud and warms it
 * @param joulesPerKelvin heat capacity of the body
 * @param selfDischargeAmps not negative
 */
public record CellParameters(double nominalAmpHours, double ampHours, double startHysteresis,
        OpenCircuit openCircuit, double ohms, double fastOhms, double fastSeconds, double slowOhms, double slowSeconds,
        EndRise fastRise, EndRise slowRise, double coldKelvin, double warmKelvin, double hysteresisVolts,
        double hysteresisRate, double tabOhms, double joulesPerKelvin, double selfDischargeAmps) {
    private static final double MONTH_HOURS = 730.5;

    public CellParameters {
        if (!(nominalAmpHours > 0 && ampHours > 0 && ohms > 0 && fastSeconds > 0 && slowSeconds > 0
                && joulesPerKelvin > 0)) {
            throw new IllegalArgumentException("charge, resistance, times and heat capacity must be above 0");
        }
    }

    /**
     * A 105 Ah LFP cell. Charge: common practice, 2 to 5 % above the nominal at a low rate. Resistances, relaxations,
     * hysteresis and the cold exponent: scaled by 2.59/105 from the published set named in open-circuit-lfp.csv and
     * from an open pulse record. Body: 2.0 kg at 1.05 kJ/(kg·K). Rises at the ends, tabs, 2 % self-discharge a month:
     * assumptions.
     */
    public static CellParameters lfp105() {
        return new CellParameters(105, 108, 0, OpenCircuit.lfp(), 0.25e-3, 0.25e-3, 30, 0.25e-3, 600,
                new EndRise(3, 0.03, 1, 0.02), new EndRise(30, 0.05, 20, 0.06), 3700, 1000, 0.025, 70, 0.02e-3, 2100,
                0.02 * 108 / MONTH_HOURS);
    }

    /** A plain electromotive force behind one resistance: no hysteresis, relaxation, temperature or self-discharge. */
    public static CellParameters plain(double ampHours, double volts, double ohms) {
        return new CellParameters(ampHours, ampHours, 0, OpenCircuit.flat(volts), ohms, 0, 30, 0, 600, EndRise.NONE,
                EndRise.NONE, 0, 0, 0, 0, 0, 2100, 0);
    }

    /** The same cell with another charge between empty and full. */
    public CellParameters withAmpHours(double other) {
        return new CellParameters(nominalAmpHours, other, startHysteresis, openCircuit, ohms, fastOhms, fastSeconds,
                slowOhms, slowSeconds, fastRise, slowRise, coldKelvin, warmKelvin, hysteresisVolts, hysteresisRate,
                tabOhms, joulesPerKelvin, selfDischargeAmps);
    }

    /** The same cell with another heat capacity of its body, J/K. */
    public CellParameters withJoulesPerKelvin(double other) {
        return new CellParameters(nominalAmpHours, ampHours, startHysteresis, openCircuit, ohms, fastOhms, fastSeconds,
                slowOhms, slowSeconds, fastRise, slowRise, coldKelvin, warmKelvin, hysteresisVolts, hysteresisRate, tabOhms,
                other, selfDischargeAmps);
    }

    /** The same cell with another rise of its slow resistance towards the ends. */
    public CellParameters withSlowRise(EndRise other) {
        return new CellParameters(nominalAmpHours, ampHours, startHysteresis, openCircuit, ohms, fastOhms, fastSeconds,
                slowOhms, slowSeconds, fastRise, other, coldKelvin, warmKelvin, hysteresisVolts, hysteresisRate, tabOhms,
                joulesPerKelvin, selfDischargeAmps);
    }

    /** The same cell with its three resistances multiplied; the tabs stay. */
    public CellParameters withOhmsTimes(double factor) {
        return new CellParameters(nominalAmpHours, ampHours, startHysteresis, openCircuit, ohms * factor, fastOhms *
                factor, fastSeconds, slowOhms * factor, slowSeconds, fastRise, slowRise, coldKelvin, warmKelvin,
                hysteresisVolts, hysteresisRate, tabOhms, joulesPerKelvin, selfDischargeAmps);
    }

    /**
     * So many of this cell side by side, as one cell: charge and heat capacity times n, resistances over n.
     *
     * @throws IllegalArgumentException if there is none
     */
    public CellParameters inParallel(int n) {
        if (n < 1) {
            throw new IllegalArgumentException("no cell in parallel: " + n);
        }
        return new CellParameters(nominalAmpHours * n, ampHours * n, startHysteresis, openCircuit, ohms / n,
                fastOhms / n, fastSeconds, slowOhms / n, slowSeconds, fastRise, slowRise, coldKelvin, warmKelvin,
                hysteresisVolts, hysteresisRate, tabOhms / n, joulesPerKelvin * n, selfDischargeAmps * n);
    }

    /** The same cell with other relaxations. */
    public CellParameters withRelaxations(double fast, double fastTime, double slow, double slowTime) {
        return new CellParameters(nominalAmpHours, ampHours, startHysteresis, openCircuit, ohms, fast, fastTime, slow,
                slowTime, fastRise, slowRise, coldKelvin, warmKelvin, hysteresisVolts, hysteresisRate, tabOhms,
                joulesPerKelvin, selfDischargeAmps);
    }

    /** The same cell with another hysteresis at the start, −1 to +1. */
    public CellParameters withStartHysteresis(double other) {
        return new CellParameters(nominalAmpHours, ampHours, other, openCircuit, ohms, fastOhms, fastSeconds,
                slowOhms, slowSeconds, fastRise, slowRise, coldKelvin, warmKelvin, hysteresisVolts, hysteresisRate,
                tabOhms, joulesPerKelvin, selfDischargeAmps);
    }
}
