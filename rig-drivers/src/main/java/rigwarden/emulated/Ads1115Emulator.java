package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * The ADS1115 converter at register level (TI SBAS444E, section 8.1 and the section on data format). An input never
 * reads beyond the supply, whatever the range. A single shot takes its sample when it starts and shows it when it ends;
 * a continuous chip shows what stood at its inputs when it is first looked at after a conversion. The comparator only
 * stores its thresholds.
 */
public final class Ads1115Emulator extends RegisterChip {
    private static final int CONVERSION = 0;
    private static final int CONFIG = 1;
    private static final int LOW_THRESHOLD = 2;
    private static final int HIGH_THRESHOLD = 3;
    private static final int IDLE = 1 << 15;
    private static final int SINGLE = 1 << 8;
    private static final int RATE_SHIFT = 5;
    private static final int RANGE_SHIFT = 9;
    private static final int MUX_SHIFT = 12;
    private static final int[] SAMPLES_PER_SECOND = {8, 16, 32, 64, 128, 250, 475, 860};
    private static final double[] FULL_SCALE_VOLTS = {6.144, 4.096, 2.048, 1.024, 0.512, 0.256, 0.256, 0.256};
    private static final int[] POSITIVE = {0, 0, 1, 2, 0, 1, 2, 3};
    private static final int[] NEGATIVE = {1, 3, 3, 3, -1, -1, -1, -1};
    private static final double CODES = 0x1p15;

    /** What is on the chip's pins. */
    public interface Wiring {
        /** The host's time in nanoseconds; never steps back. */
        long nanos();

        /**
         * Volts at an input against ground.
         *
         * @param pin 0 to 3
         */
        double inputVolts(int pin);
    }

    /**
     * How this specimen errs.
     *
     * @param gains relative error of each of the eight PGA codes
     * @param offsetVolts added to each of the four inputs
     * @param rate relative error of the data rate; 0.1 is the datasheet's limit
     * @param supplyVolts the supply, where the inputs clip
     * @param noiseVolts root mean square of one conversion
     */
    public record Errors(double[] gains, double[] offsetVolts, double rate, double supplyVolts, double noiseVolts) {
        private static final int RANGES = 8;
        private static final int INPUTS = 4;

        /** Takes copies; refuses arrays of another length than eight and four. */
        public Errors {
            gains = gains.clone();
            offsetVolts = offsetVolts.clone();
            if (gains.length != RANGES || offsetVolts.length != INPUTS) {
                throw new IllegalArgumentException("an ADS1115 has 8 ranges and 4 inputs, not " + gains.length
                        + " and " + offsetVolts.length);
            }
        }

        /** A specimen without any error on this supply. */
        public static Errors none(double supplyVolts) {
            return new Errors(new double[RANGES], new double[INPUTS], 0, supplyVolts, 0);
        }
    }

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private int config;
    private int low;
    private int high;
    private int shown;
    private int coming;
    private long endNanos;

    /** A chip that has just been given its supply: powered down, with nothing converted. */
    public Ads1115Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        reset();
    }

    private Ads1115Emulator(Ads1115Emulator other, Wiring wiring) {
        super(other);
        this.wiring = wiring;
        errors = other.errors;
        noise = other.noise.copy();
        config = other.config;
        low = other.low;
        high = other.high;
        shown = other.shown;
        coming = other.coming;
        endNanos = other.endNanos;
    }

    /** The same chip in the same state, its noise included, on other wires. */
    public Ads1115Emulator copy(Wiring newWiring) {
        return new Ads1115Emulator(this, newWiring);
    }

    @Override
    void reset() {
        config = 0x8583 & ~IDLE;
        low = 0x8000;
        high = 0x7FFF;
        shown = 0;
        endNanos = Long.MAX_VALUE;
    }

    @Override
    int width(int register) {
        return register <= HIGH_THRESHOLD ? 2 : 0;
    }

    @Override
    long value(int register) {
        refresh();
        return switch (register) {
            case CONVERSION -> shown;
            case CONFIG -> config | (endNanos == Long.MAX_VALUE ? IDLE : 0);
            case LOW_THRESHOLD -> low;
            default -> high;
        };
    }

    @Override
    boolean store(int register, int word) {
        refresh();
        switch (register) {
            case CONFIG -> configure(word);
            case LOW_THRESHOLD -> low = word;
            case HIGH_THRESHOLD -> high = word;
            default -> {
                return false;
            }
        }
        return true;
    }

    private void configure(int word) {
        boolean wasSingle = (config & SINGLE) != 0;
        boolean single = (word & SINGLE) != 0;
        boolean busy = wasSingle && endNanos != Long.MAX_VALUE;
        config = word & ~IDLE;
        if (busy && single) {
            return;
        }
        if (!single) {
            endNanos = wiring.nanos() + conversionNanos();
        } else if ((word & IDLE) != 0) {
            coming = sample();
            endNanos = wiring.nanos() + conversionNanos();
        } else {
            endNanos = Long.MAX_VALUE;
        }
    }

    private void refresh() {
        long nanos = wiring.nanos();
        if (nanos < endNanos) {
            return;
        }
        if ((config & SINGLE) != 0) {
            shown = coming;
            endNanos = Long.MAX_VALUE;
        } else {
            shown = sample();
            long conversion = conversionNanos();
            endNanos += ((nanos - endNanos) / conversion + 1) * conversion;
        }
    }

    private long conversionNanos() {
        return (long) Math.ceil(1e9 / SAMPLES_PER_SECOND[config >> RATE_SHIFT & 7] * (1 + errors.rate()));
    }

    private int sample() {
        int mux = config >> MUX_SHIFT & 7;
        int range = config >> RANGE_SHIFT & 7;
        double volts = pinVolts(POSITIVE[mux]);
        if (NEGATIVE[mux] >= 0) {
            volts -= pinVolts(NEGATIVE[mux]);
        }
        volts *= 1 + errors.gains[range];
        if (errors.noiseVolts > 0) {
            volts += noise.nextGaussian() * errors.noiseVolts;
        }
        long code = Math.round(volts / FULL_SCALE_VOLTS[range] * CODES);
        return Math.clamp(code, Short.MIN_VALUE, Short.MAX_VALUE);
    }

    private double pinVolts(int pin) {
        return Math.clamp(wiring.inputVolts(pin), 0, errors.supplyVolts) + errors.offsetVolts[pin];
    }
}
