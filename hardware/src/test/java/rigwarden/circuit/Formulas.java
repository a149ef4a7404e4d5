package rigwarden.circuit;

/** The formulas of {@code hardware/guide.md}; SI units unless a name says otherwise. {@link FormulasTest} holds each against its source. */
final class Formulas {
    /** Annealed copper at 20 °C, ohm·m, and its temperature coefficient, 1/K (IEC 60028). */
    static final double COPPER = 1.7241e-8;
    static final double COPPER_PER_KELVIN = 0.00393;
    /** Heat conductivity of copper, W/(m·K): common practice. */
    static final double COPPER_HEAT = 390;
    /** Copper with PVC around it from 70 to 160 °C, A·√s/mm² (IEC 60364-5-54). */
    static final double PVC = 115;

    private Formulas() {}

    /** Current of a pack into a short circuit: the same for any number in series, when nothing but the cells limits it. */
    static double shortCircuitAmps(double cellVolts, double cellOhms) {
        return cellVolts / cellOhms;
    }

    static double fuseAmps(double continuousAmps) {
        return continuousAmps / 0.8;
    }

    /** Least copper that bears a current for a short time without its insulation's suffering (adiabatic), mm². */
    static double cableSquareMillimetres(double amps, double seconds, double k) {
        return amps * Math.sqrt(seconds) / k;
    }

    /** The constant of that, A·√s/mm²: heat of copper, resistivity at 20 °C, temperatures before and after. */
    static double adiabatic(double before, double after) {
        return Math.sqrt(3.45e-3 * (234.5 + 20) / 17.241e-6 * Math.log((234.5 + after) / (234.5 + before)));
    }

    static double copperOhms(double metres, double squareMillimetres, double celsius) {
        return COPPER * (1 + COPPER_PER_KELVIN * (celsius - 20)) * metres / (squareMillimetres * 1e-6);
    }

    /** How much warmer a link is in its middle than at its two cooled ends, K. */
    static double linkKelvin(double amps, double squareMillimetres, double metres) {
        double density = amps / (squareMillimetres * 1e-6);
        return density * density * COPPER * metres * metres / (8 * COPPER_HEAT);
    }

    /** Current of a free bar on edge in still air for a rise of 50 K over 40 °C, A; sides in mm. */
    static double barAmps(double wide, double thick) {
        return 7.73 * Math.sqrt(wide * thick) * Math.pow(2 * (wide + thick), 0.39);
    }

    static double prechargeTau(double ohms, double bleedOhms, double farads) {
        return farads * ohms * bleedOhms / (ohms + bleedOhms);
    }

    /** Time until the bus has 95 % of the pack, s; not a number where the bleed holds it below that for ever. */
    static double prechargeSeconds(double ohms, double bleedOhms, double farads) {
        double end = bleedOhms / (ohms + bleedOhms);
        return prechargeTau(ohms, bleedOhms, farads) * Math.log(end / (end - 0.95));
    }

    /** Heat in the resistor that fills the capacitors: as much as is stored, whatever its resistance. */
    static double prechargeJoules(double farads, double volts) {
        return farads * volts * volts / 2;
    }

    static double bleedSeconds(double ohms, double farads) {
        return ohms * farads * Math.log(20);
    }

    /** Time until a coil's current has fallen to a share of what it was, against a voltage that is held at its ends. */
    static double coilSeconds(double henries, double ohms, double volts, double against, double share) {
        return henries / ohms * Math.log((volts + against) / (share * volts + against));
    }

    /** Hold of the heartbeat stage: the hold capacitor and one pair of coupling capacitors, drained from one share of the supply to another. */
    static double holdSeconds(double ohms, double farads, double from, double to) {
        return ohms * farads * Math.log(from / to);
    }

    /** Lower threshold of the stage as a share of its supply: its output low, so that the hysteresis resistor lies beside the lower one. */
    static double threshold(double upper, double lower, double hysteresis) {
        return (1 / upper) / (1 / upper + 1 / lower + 1 / hysteresis);
    }

    /** Voltage before a divider at which its middle stands at a reference, V. */
    static double windowVolts(double reference, double upper, double lower) {
        return reference * (upper + lower) / lower;
    }

    /** Voltage in the middle of a divider, V. */
    static double dividedVolts(double volts, double upper, double lower) {
        return volts * lower / (upper + lower);
    }

    static double watts(double amps, double ohms) {
        return amps * amps * ohms;
    }
}
