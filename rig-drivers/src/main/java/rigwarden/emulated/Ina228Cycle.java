package rigwarden.emulated;

/** Conversion cycles on the chip's own clock (TI SLYS021A, ADC_CONFIG): averages times the enabled conversions. */
final class Ina228Cycle {
    private static final int[] MICROS = {50, 84, 150, 280, 540, 1052, 2074, 4120};
    private static final int[] AVERAGES = {1, 4, 16, 64, 128, 256, 512, 1024};
    private static final double DELAY_STEP_NANOS = 2e6;

    private final double oscillator;
    private int mode;
    private int averages;
    private double cycleNanos;
    private double firstNanos;
    private long startNanos;
    private long endNanos;

    Ina228Cycle(double oscillator) {
        this.oscillator = oscillator;
    }

    Ina228Cycle copy() {
        Ina228Cycle copy = new Ina228Cycle(oscillator);
        copy.mode = mode;
        copy.averages = averages;
        copy.cycleNanos = cycleNanos;
        copy.firstNanos = firstNanos;
        copy.startNanos = startNanos;
        copy.endNanos = endNanos;
        return copy;
    }

    void restart(long nanos, int adcConfig, int config) {
        mode = adcConfig >> 12 & 0xF;
        averages = AVERAGES[adcConfig & 7];
        int micros = (measuresBus() ? MICROS[adcConfig >> 9 & 7] : 0)
                + (measuresShunt() ? MICROS[adcConfig >> 6 & 7] : 0)
                + (measuresDie() ? MICROS[adcConfig >> 3 & 7] : 0);
        cycleNanos = averages * micros * 1e3 / (1 + oscillator);
        firstNanos = cycleNanos + (config >> 6 & 0xFF) * DELAY_STEP_NANOS / (1 + oscillator);
        startNanos = nanos;
        endNanos = micros == 0 ? Long.MAX_VALUE : nanos + (long) Math.ceil(firstNanos);
    }

    /** Whether a cycle has ended since this was last asked. */
    boolean ended(long nanos) {
        if (nanos < endNanos) {
            return false;
        }
        if (accumulates()) {
            double since = nanos - startNanos - firstNanos;
            double next = firstNanos + (Math.floor(since / cycleNanos) + 1) * cycleNanos;
            endNanos = Math.max(nanos + 1, startNanos + (long) Math.ceil(next));
        } else {
            endNanos = Long.MAX_VALUE;
        }
        return true;
    }

    boolean measuresBus() {
        return (mode & 1) != 0;
    }

    boolean measuresShunt() {
        return (mode & 2) != 0;
    }

    boolean measuresDie() {
        return (mode & 4) != 0;
    }

    /** Only a chip that converts without being triggered counts charge and energy. */
    boolean accumulates() {
        return (mode & 8) != 0;
    }

    int averages() {
        return averages;
    }
}
