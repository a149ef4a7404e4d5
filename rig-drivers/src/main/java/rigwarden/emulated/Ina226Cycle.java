package rigwarden.emulated;

/** Conversion cycles of the INA226 (TI SBOS547, table of modes, averages and times): averages times what is enabled. */
final class Ina226Cycle {
    private static final int[] MICROS = {140, 204, 332, 588, 1100, 2116, 4156, 8244};
    private static final int[] AVERAGES = {1, 4, 16, 64, 128, 256, 512, 1024};
    private static final int SHUNT = 1;
    private static final int BUS = 2;
    private static final int CONTINUOUS = 4;

    private final double oscillator;
    private int mode;
    private int averages = 1;
    private long cycleNanos;
    private long endNanos = Long.MAX_VALUE;

    Ina226Cycle(double oscillator) {
        this.oscillator = oscillator;
    }

    Ina226Cycle copy() {
        Ina226Cycle copy = new Ina226Cycle(oscillator);
        copy.mode = mode;
        copy.averages = averages;
        copy.cycleNanos = cycleNanos;
        copy.endNanos = endNanos;
        return copy;
    }

    /** A write of the configuration: what was under way is dropped, and a triggered mode converts once. */
    void restart(long nanos, int config) {
        mode = config & 7;
        averages = AVERAGES[config >> 9 & 7];
        int micros = (measuresBus() ? MICROS[config >> 6 & 7] : 0) + (measuresShunt() ? MICROS[config >> 3 & 7] : 0);
        cycleNanos = (long) Math.ceil(averages * micros * 1e3 / (1 + oscillator));
        endNanos = micros == 0 ? Long.MAX_VALUE : nanos + cycleNanos;
    }

    /** Whether a cycle has ended since this was last asked. */
    boolean ended(long nanos) {
        if (nanos < endNanos) {
            return false;
        }
        endNanos = (mode & CONTINUOUS) == 0 ? Long.MAX_VALUE
                : endNanos + ((nanos - endNanos) / cycleNanos + 1) * cycleNanos;
        return true;
    }

    boolean poweredDown() {
        return (mode & (SHUNT | BUS)) == 0;
    }

    boolean measuresShunt() {
        return (mode & SHUNT) != 0;
    }

    boolean measuresBus() {
        return (mode & BUS) != 0;
    }

    int averages() {
        return averages;
    }
}
