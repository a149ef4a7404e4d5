package rigwarden.emulated;

/**
 * What is left of an inverter's ripple in one averaged conversion of the shunt monitor. Its accumulator adds up every
 * conversion and sees next to nothing of it; the host's samples, ten a second, see it as a slow wave. Cell taps have a
 * filter of 50 ms before their input (assumption of the reference rig) and see none; the bus has none and sees all of it.
 */
final class Ripple {
    /** Twice 50.02 Hz, an inverter on its own clock (assumption). */
    private static final double RADIANS_PER_SECOND = 2 * Math.PI * 100.04;
    /** Sixteen conversions of shunt and bus, 1052 µs each (TI SLYS021A, ADC_CONFIG). */
    private static final double WINDOW_S = 16 * 2 * 1052e-6;

    private Ripple() {}

    /** The wave at this instant: an input without a filter sees it so, in a conversion that is short against it. */
    static double now(double amplitude, long nanos) {
        return amplitude == 0 ? 0 : amplitude * Math.sin(RADIANS_PER_SECOND * (nanos * 1e-9));
    }

    /**
     * Mean of the wave over the conversion that ends now.
     *
     * @param amplitudeAmps of the 100 Hz part, A
     * @param nanos the present instant
     */
    static double mean(double amplitudeAmps, long nanos) {
        if (amplitudeAmps == 0) {
            return 0;
        }
        double end = RADIANS_PER_SECOND * (nanos * 1e-9);
        double window = RADIANS_PER_SECOND * WINDOW_S;
        return amplitudeAmps * (Math.cos(end - window) - Math.cos(end)) / window;
    }
}
