package rigwarden.emulated;

import rigwarden.pack.Chance;

/** An ADS1115 as its data sheet describes it (SBAS444E, sections 7.3, 8.1): its inputs never read above its supply. */
public final class Ads1115Emulator implements I2cTarget {
    /** What the pins see. */
    public interface Wiring {
        long nanos();

        /** On AIN0…AIN3, V. */
        double inputVolts(int pin);
    }

    /**
     * How this specimen errs.
     *
     * @param gain relative
     * @param offsetVolts input offset
     * @param rate relative error of its data rate, within ± 10 %
     * @param supplyVolts what clips the inputs
     * @param noiseVolts rms of one conversion
     */
    public record Errors(double gain, double offsetVolts, double rate, double supplyVolts, double noiseVolts) {}

    private static final double[] FULL_SCALE = {6.144, 4.096, 2.048, 1.024, 0.512, 0.256, 0.256, 0.256};
    private static final int[] RATE = {8, 16, 32, 64, 128, 250, 475, 860};

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private int pointer;
    private int config = 0x8583;
    private int low = 0x8000;
    private int high = 0x7FFF;
    private int conversion;
    private int pending;
    private long doneNanos = Long.MIN_VALUE;

    public Ads1115Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
    }

    /** This chip in this state on other wires. */
    public Ads1115Emulator copy(Wiring other) {
        Ads1115Emulator copy = new Ads1115Emulator(other, errors, noise.copy());
        copy.pointer = pointer;
        copy.config = config;
        copy.low = low;
        copy.high = high;
        copy.conversion = conversion;
        copy.pending = pending;
        copy.doneNanos = doneNanos;
        return copy;
    }

    /** The supply was gone for a moment. */
    public void powerOnReset() {
        config = 0x8583;
        low = 0x8000;
        high = 0x7FFF;
        conversion = 0;
        doneNanos = Long.MIN_VALUE;
    }

    @Override
    public int written(byte[] bytes, int offset, int length) {
        pointer = bytes[offset] & 0xFF;
        if (pointer > 3 || length != 1 && length != 3) {
            return -1;
        }
        if (length == 3) {
            int word = (bytes[offset + 1] & 0xFF) << 8 | bytes[offset + 2] & 0xFF;
            switch (pointer) {
                case 1 -> configure(word);
                case 2 -> low = word;
                case 3 -> high = word;
                default -> {
                    return -1;
                }
            }
        }
        return length;
    }

    private void configure(int word) {
        settle();
        config = word & 0x7FFF;
        boolean continuous = (word & 0x0100) == 0;
        if ((word & 0x8000) != 0 || continuous) {
            double seconds = 1 / (RATE[word >> 5 & 7] * (1 + errors.rate()));
            pending = convert();
            doneNanos = wiring.nanos() + Math.round(seconds * 1e9);
        }
    }

    private int convert() {
        int mux = config >> 12 & 7;
        double volts = switch (mux) {
            case 0 -> pin(0) - pin(1);
            case 1 -> pin(0) - pin(3);
            case 2 -> pin(1) - pin(3);
            case 3 -> pin(2) - pin(3);
            default -> pin(mux - 4);
        };
        double step = FULL_SCALE[config >> 9 & 7] / 32768;
        double read = volts * (1 + errors.gain()) + errors.offsetVolts() + noise.nextGaussian() * errors.noiseVolts();
        return Math.clamp(Math.round(read / step), -32768, 32767);
    }

    private double pin(int pin) {
        return Math.clamp(wiring.inputVolts(pin), 0, errors.supplyVolts());
    }

    private void settle() {
        if (doneNanos != Long.MIN_VALUE && wiring.nanos() >= doneNanos) {
            conversion = pending;
            boolean continuous = (config & 0x0100) == 0;
            doneNanos = Long.MIN_VALUE;
            if (continuous) {
                pending = convert();
                doneNanos = wiring.nanos();
            }
        }
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        settle();
        boolean busy = doneNanos != Long.MIN_VALUE && (config & 0x0100) != 0;
        int word = switch (pointer) {
            case 0 -> conversion;
            case 1 -> busy ? config : config | 0x8000;
            case 2 -> low;
            default -> high;
        };
        int bytes = Math.min(2, length);
        for (int i = 0; i < bytes; i++) {
            into[offset + i] = (byte) (word >> 8 * (1 - i));
        }
        return bytes;
    }
}
