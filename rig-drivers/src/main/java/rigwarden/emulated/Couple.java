package rigwarden.emulated;

import java.util.function.DoubleUnaryOperator;

/**
 * A thermocouple as a source of voltage. Types K, T, J and N follow NIST Monograph 175; the four that no rig uses are straight
 * lines through their voltage at 50 °C (from memory): good enough to be wrong by the right amount where a chip is set to
 * them by mistake.
 */
public enum Couple {
    /** Type B. */
    B(250, 1820, line(0.002)),
    /** Type E. */
    E(-200, 1000, line(3.048)),
    /** Type J. */
    J(-210, 1200, CoupleFunctions::j),
    /** Type K. */
    K(-200, 1372, CoupleFunctions::k),
    /** Type N. */
    N(-200, 1300, CoupleFunctions::n),
    /** Type R. */
    R(-50, 1768, line(0.296)),
    /** Type S. */
    S(-50, 1768, line(0.299)),
    /** Type T. */
    T(-200, 400, CoupleFunctions::t);

    private static final int MOST_STEPS = 60;
    private static final double CLOSE_KELVIN = 1e-9;
    private static final double BESIDE_KELVIN = 1e-3;
    private static final double START_C = 25;

    /** The least and the most that is measured with it, °C (ranges of the MAX31856's table, from memory). */
    final double lowestC;
    final double highestC;
    private final DoubleUnaryOperator millivolts;

    Couple(double lowestC, double highestC, DoubleUnaryOperator millivolts) {
        this.lowestC = lowestC;
        this.highestC = highestC;
        this.millivolts = millivolts;
    }

    private static DoubleUnaryOperator line(double millivoltsAtFifty) {
        return celsius -> celsius * millivoltsAtFifty / 50;
    }

    /** Voltage of a tip at this temperature whose other ends are at 0 °C, mV. */
    public double millivolts(double celsius) {
        return millivolts.applyAsDouble(celsius);
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
