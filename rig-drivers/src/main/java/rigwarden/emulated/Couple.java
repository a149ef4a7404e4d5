package rigwarden.emulated;

/**
 * A thermocouple as a source of voltage. Types K, T, J and N follow NIST Monograph 175; the four that no rig uses are straight
 * lines through their voltage at 50 °C (from memory): good enough to be wrong by the right amount where a chip is set to
 * them by mistake.
 */
public enum Couple {
    /** Type B. */
    B(250, 1820),
    /** Type E. */
    E(-200, 1000),
    /** Type J. */
    J(-210, 1200),
    /** Type K. */
    K(-200, 1372),
    /** Type N. */
    N(-200, 1300),
    /** Type R. */
    R(-50, 1768),
    /** Type S. */
    S(-50, 1768),
    /** Type T. */
    T(-200, 400);

    private static final double LINE_C = 50;
    private static final int MOST_STEPS = 60;
    private static final double CLOSE_KELVIN = 1e-9;
    private static final double BESIDE_KELVIN = 1e-3;
    private static final double START_C = 25;

    /** The least and the most that is measured with it, °C (ranges of the MAX31856's table, from memory). */
    final double lowestC;
    final double highestC;

    Couple(double lowestC, double highestC) {
        this.lowestC = lowestC;
        this.highestC = highestC;
    }

    /** Voltage of a tip at this temperature whose other ends are at 0 °C, mV. */
    public double millivolts(double celsius) {
        return switch (this) {
            case B -> 0.002 / LINE_C * celsius;
            case E -> 3.048 / LINE_C * celsius;
            case J -> CoupleFunctions.j(celsius);
            case K -> CoupleFunctions.k(celsius);
            case N -> CoupleFunctions.n(celsius);
            case R -> 0.296 / LINE_C * celsius;
            case S -> 0.299 / LINE_C * celsius;
            case T -> CoupleFunctions.t(celsius);
        };
    }

    /** Voltage at the ends of a probe, mV: what a chip's terminals see. */
    public double millivolts(double hotCelsius, double coldCelsius) {
        return millivolts(hotCelsius) - millivolts(coldCelsius);
    }

    /** The temperature that gives this voltage against 0 °C; an end of the type's range where none in it does, °C. */
    public double celsius(double wantedMillivolts) {
        if (wantedMillivolts <= millivolts(lowestC)) {
            return lowestC;
        }
        if (wantedMillivolts >= millivolts(highestC)) {
            return highestC;
        }
        double celsius = Math.clamp(START_C, lowestC, highestC);
        for (int i = 0; i < MOST_STEPS; i++) {
            double slope = (millivolts(celsius + BESIDE_KELVIN) - millivolts(celsius - BESIDE_KELVIN)) / (2 * BESIDE_KELVIN);
            double better = Math.clamp(celsius + (wantedMillivolts - millivolts(celsius)) / slope, lowestC, highestC);
            if (Math.abs(better - celsius) < CLOSE_KELVIN) {
                return better;
            }
            celsius = better;
        }
        return celsius;
    }
}
