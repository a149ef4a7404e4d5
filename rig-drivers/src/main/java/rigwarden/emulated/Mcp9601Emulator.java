package rigwarden.emulated;

import java.util.Arrays;
import rigwarden.pack.Chance;

/**
 * The MCP9601 thermocouple converter with a type T probe at register level (Microchip DS20005426C, registers; filter,
 * conversion times and the two fault bits of STATUS from memory of the family's DS20005426F). An open probe leaves the
 * hot junction at its last value; a shorted one reads the cold junction. The wrong type in the configuration reads as
 * wrongly as the two types differ at 50 °C. The alerts only store their settings. Conversions that have ended since the
 * chip was last looked at take what stands there now.
 */
public final class Mcp9601Emulator extends RegisterChip {
    private static final int HOT = 0x00;
    private static final int DELTA = 0x01;
    private static final int COLD = 0x02;
    private static final int RAW = 0x03;
    private static final int STATUS = 0x04;
    private static final int SENSOR = 0x05;
    private static final int DEVICE = 0x06;
    private static final int ALERT_CONFIG = 0x08;
    private static final int ALERT_HYSTERESIS = 0x0C;
    private static final int ALERT_LIMIT = 0x10;
    private static final int ALERT_LAST = 0x13;
    private static final int IDENTITY = 0x20;

    private static final int BURST_COMPLETE = 1 << 7;
    private static final int UPDATED = 1 << 6;
    private static final int SHORTED = 1 << 5;
    private static final int OPEN = 1 << 4;
    private static final int NORMAL_MODE = 0;
    private static final int BURST_MODE = 2;

    private static final double STEP = 0.0625;
    private static final double COARSE_COLD_STEP = 0.25;
    private static final double RAW_STEP_MILLIVOLTS = 0.002;
    private static final long[] CONVERSION_NANOS = {320_000_000, 80_000_000, 20_000_000, 5_000_000};
    /** Kelvins of one step of 18, 16, 14 and 12 bits, at least the register's own step. */
    private static final double[] HOT_STEPS = {0.0625, 0.25, 1, 4};
    /** Millivolts at 50 °C of types K J T N S E B R (NIST Monograph 175; the last four from memory). */
    private static final double[] MILLIVOLTS = {2.023078, 2.585315, 2.035722, 1.339830, 0.299, 3.048, 0.002, 0.296};
    private static final int TYPE_T = 2;
    private static final double REFERENCE_KELVIN = 50;

    /** What hangs on the chip. */
    public interface Wiring {
        /** The host's time in nanoseconds; never steps back. */
        long nanos();

        /** Temperature of the probe's tip. */
        double hotCelsius();

        /** Temperature of the chip, where the probe's wires end. */
        double coldCelsius();

        /** Whether the probe's circuit is broken. */
        boolean open();

        /** Whether the probe touches the chip's supply or ground. */
        boolean shorted();
    }

    /**
     * How this specimen errs.
     *
     * @param hotKelvin added to the hot junction
     * @param noiseKelvin root mean square of one conversion
     */
    public record Errors(double hotKelvin, double noiseKelvin) {
        /** A specimen without any error. */
        public static final Errors NONE = new Errors(0, 0);
    }

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private final int[] stored;
    private double delta;
    private double cold;
    private boolean converted;
    private int status;
    private long startNanos;
    private long endNanos;

    /** A chip that has just been given its supply. */
    public Mcp9601Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        stored = new int[ALERT_LAST + 1];
        reset();
    }

    private Mcp9601Emulator(Mcp9601Emulator other, Wiring wiring) {
        super(other);
        this.wiring = wiring;
        errors = other.errors;
        noise = other.noise.copy();
        stored = other.stored.clone();
        delta = other.delta;
        cold = other.cold;
        converted = other.converted;
        status = other.status;
        startNanos = other.startNanos;
        endNanos = other.endNanos;
    }

    /** The same chip in the same state, its noise included, on other wires. */
    public Mcp9601Emulator copy(Wiring newWiring) {
        return new Mcp9601Emulator(this, newWiring);
    }

    @Override
    void reset() {
        Arrays.fill(stored, 0);
        delta = 0;
        cold = 0;
        converted = false;
        status = 0;
        restart();
    }

    @Override
    int width(int register) {
        return switch (register) {
            case HOT, DELTA, COLD, IDENTITY, ALERT_LIMIT, ALERT_LIMIT + 1, ALERT_LIMIT + 2, ALERT_LAST -> 2;
            case RAW -> 3;
            case STATUS, SENSOR, DEVICE, ALERT_CONFIG, ALERT_CONFIG + 1, ALERT_CONFIG + 2, ALERT_CONFIG + 3,
                    ALERT_HYSTERESIS, ALERT_HYSTERESIS + 1, ALERT_HYSTERESIS + 2, ALERT_HYSTERESIS + 3 -> 1;
            default -> 0;
        };
    }

    @Override
    long value(int register) {
        refresh();
        return switch (register) {
            case HOT -> Math.round((delta + cold) / STEP);
            case DELTA -> Math.round(delta / STEP);
            case COLD -> Math.round(cold / STEP);
            case RAW -> Math.round(delta * MILLIVOLTS[TYPE_T] / REFERENCE_KELVIN / RAW_STEP_MILLIVOLTS);
            case STATUS -> status;
            case IDENTITY -> 0x4110;
            default -> stored[register];
        };
    }

    @Override
    boolean store(int register, int word) {
        refresh();
        switch (register) {
            case STATUS -> status &= word | ~(BURST_COMPLETE | UPDATED);
            case SENSOR -> {
                stored[SENSOR] = word & 0x77;
                converted = false;
            }
            case DEVICE -> {
                stored[DEVICE] = word;
                restart();
            }
            case HOT, DELTA, COLD, RAW, IDENTITY -> {
                return false;
            }
            default -> stored[register] = word;
        }
        return true;
    }

    private void restart() {
        startNanos = wiring.nanos();
        int mode = stored[DEVICE] & 3;
        endNanos = switch (mode) {
            case NORMAL_MODE -> startNanos + conversionNanos();
            case BURST_MODE -> startNanos + (conversionNanos() << (stored[DEVICE] >> 2 & 7));
            default -> Long.MAX_VALUE;
        };
    }

    private void refresh() {
        long nanos = wiring.nanos();
        if (nanos < endNanos) {
            return;
        }
        long conversion = conversionNanos();
        if ((stored[DEVICE] & 3) == BURST_MODE) {
            convert(1L << (stored[DEVICE] >> 2 & 7));
            status |= BURST_COMPLETE;
            endNanos = Long.MAX_VALUE;
        } else {
            long count = (nanos - endNanos) / conversion + 1;
            convert(count);
            endNanos += count * conversion;
        }
    }

    private long conversionNanos() {
        return CONVERSION_NANOS[stored[DEVICE] >> 5 & 3];
    }

    /** The filter's weight of the new value is 2 / (2^n + 1), once for each conversion that has passed. */
    private void convert(long count) {
        boolean open = wiring.open();
        boolean shorted = !open && wiring.shorted();
        status = status & ~(OPEN | SHORTED) | UPDATED | (open ? OPEN : 0) | (shorted ? SHORTED : 0);
        double coldStep = (stored[DEVICE] & 0x80) != 0 ? COARSE_COLD_STEP : STEP;
        double newCold = Math.round(wiring.coldCelsius() / coldStep) * coldStep;
        if (open) {
            delta += cold - newCold;
            cold = newCold;
            return;
        }
        cold = newCold;
        double fresh = shorted ? 0 : measured();
        int filter = stored[SENSOR] & 7;
        double old = converted && filter > 0 ? Math.pow(1 - 2.0 / ((1 << filter) + 1), (double) count) : 0;
        delta = old * delta + (1 - old) * fresh;
        converted = true;
    }

    private double measured() {
        double kelvin = wiring.hotCelsius() + errors.hotKelvin() - wiring.coldCelsius();
        if (errors.noiseKelvin() > 0) {
            kelvin += noise.nextGaussian() * errors.noiseKelvin();
        }
        int type = stored[SENSOR] >> 4 & 7;
        double step = HOT_STEPS[stored[DEVICE] >> 5 & 3];
        return Math.round(kelvin * MILLIVOLTS[TYPE_T] / MILLIVOLTS[type] / step) * step;
    }
}
