package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * An INA228 as its data sheet describes it (SLYS021A, sections 7.3, 7.6, 8.1): registers with their reset values, results
 * of 20 bits left-aligned in 24, accumulators and conversions by the chip's own oscillator, good to ± 0.5 %.
 */
public final class Ina228Emulator implements I2cTarget {
    /** What the pins see. */
    public interface Wiring {
        long nanos();

        /** Across the shunt, V. */
        double shuntVolts();

        /** Integral of that since the start, V·s. */
        double shuntVoltSeconds();

        /** On the bus pin, V. */
        double busVolts();
    }

    /**
     * How this specimen errs.
     *
     * @param gain relative, of the shunt input
     * @param offsetVolts of the shunt input
     * @param busGain relative, of the bus input
     * @param oscillator relative, of its clock: + is fast
     * @param noiseVolts rms of one unaveraged shunt conversion
     */
    public record Errors(double gain, double offsetVolts, double busGain, double oscillator, double noiseVolts) {}

    private static final double SHUNT_STEP = 312.5e-9;
    private static final double BUS_STEP = 195.3125e-6;
    private static final int[] MICROS = {50, 84, 150, 280, 540, 1052, 2074, 4120};
    private static final int[] AVERAGES = {1, 4, 16, 64, 128, 256, 512, 1024};

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private int pointer;
    private int config;
    private int adcConfig = 0xFB68;
    private int shuntCal = 0x1000;
    private int tempco;
    private int diagnosis = 1;
    private final int[] limits = {0x7FFF, 0x8000, 0x7FFF, 0x0000, 0x7FFF, 0xFFFF};
    private long sinceNanos;
    private long readCycles;
    private double chargeBase;
    private double secondsBase;
    private double accumulated;
    private double averageFactor;
    private double cycleNanos;

    public Ina228Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        restart();
    }

    /** This chip in this state on other wires. */
    public Ina228Emulator copy(Wiring other) {
        Ina228Emulator copy = new Ina228Emulator(other, errors, noise.copy());
        copy.pointer = pointer;
        copy.config = config;
        copy.adcConfig = adcConfig;
        copy.shuntCal = shuntCal;
        copy.tempco = tempco;
        copy.diagnosis = diagnosis;
        System.arraycopy(limits, 0, copy.limits, 0, limits.length);
        copy.sinceNanos = sinceNanos;
        copy.readCycles = readCycles;
        copy.chargeBase = chargeBase;
        copy.secondsBase = secondsBase;
        copy.accumulated = accumulated;
        copy.averageFactor = averageFactor;
        copy.cycleNanos = cycleNanos;
        return copy;
    }

    /** The supply was gone for a moment: every register is at its reset value. */
    public void powerOnReset() {
        config = 0;
        adcConfig = 0xFB68;
        shuntCal = 0x1000;
        tempco = 0;
        diagnosis = 1;
        accumulated = 0;
        restart();
    }

    /** Conversions begin anew, now. */
    private void restart() {
        int average = AVERAGES[adcConfig & 7];
        double micros = 0;
        int mode = adcConfig >> 12;
        micros += (mode & 1) == 0 ? 0 : MICROS[adcConfig >> 9 & 7];
        micros += (mode & 2) == 0 ? 0 : MICROS[adcConfig >> 6 & 7];
        micros += (mode & 4) == 0 ? 0 : MICROS[adcConfig >> 3 & 7];
        cycleNanos = Math.max(average * micros * 1000 / (1 + errors.oscillator()), 1);
        averageFactor = 1 / Math.sqrt(average);
        sinceNanos = wiring.nanos();
        readCycles = 0;
        chargeBase = wiring.shuntVoltSeconds();
        secondsBase = wiring.nanos() * 1e-9;
    }

    private long cycles() {
        return (long) ((wiring.nanos() - sinceNanos) / cycleNanos);
    }

    @Override
    public int written(byte[] bytes, int offset, int length) {
        pointer = bytes[offset] & 0xFF;
        if (length == 1) {
            return width(pointer) == 0 ? -1 : 1;
        }
        if (length != 3) {
            return -1;
        }
        int word = (bytes[offset + 1] & 0xFF) << 8 | bytes[offset + 2] & 0xFF;
        return set(word) ? length : -1;
    }

    private boolean set(int word) {
        switch (pointer) {
            case 0x00 -> {
                if ((word & 0x8000) != 0) {
                    powerOnReset();
                    return true;
                }
                if ((word & 0x4000) != 0) {
                    accumulated = 0;
                    chargeBase = wiring.shuntVoltSeconds();
                    secondsBase = wiring.nanos() * 1e-9;
                }
                config = word & 0x3FF0;
            }
            case 0x01 -> {
                accumulated = chargeCodes();
                adcConfig = word;
                restart();
            }
            case 0x02 -> {
                accumulated = chargeCodes();
                chargeBase = wiring.shuntVoltSeconds();
                secondsBase = wiring.nanos() * 1e-9;
                shuntCal = word & 0x7FFF;
            }
            case 0x03 -> tempco = word & 0x3FFF;
            case 0x0B -> diagnosis = word & 0xF000 | diagnosis & 0x0FFF;
            case 0x0C, 0x0D, 0x0E, 0x0F, 0x10, 0x11 -> limits[pointer - 0x0C] = word;
            default -> {
                return false;
            }
        }
        return true;
    }

    private static int width(int register) {
        return switch (register) {
            case 0x00, 0x01, 0x02, 0x03, 0x06, 0x0B, 0x0C, 0x0D, 0x0E, 0x0F, 0x10, 0x11, 0x3E, 0x3F -> 2;
            case 0x04, 0x05, 0x07, 0x08 -> 3;
            case 0x09, 0x0A -> 5;
            default -> 0;
        };
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        int width = width(pointer);
        if (width == 0) {
            return -1;
        }
        long word = word();
        int bytes = Math.min(width, length);
        for (int i = 0; i < bytes; i++) {
            into[offset + i] = (byte) (word >> 8 * (width - 1 - i));
        }
        return bytes;
    }

    private long word() {
        return switch (pointer) {
            case 0x00 -> config;
            case 0x01 -> adcConfig;
            case 0x02 -> shuntCal;
            case 0x03 -> tempco;
            case 0x04 -> cycles() == 0 ? 0 : shuntCode() << 4;
            case 0x05 -> cycles() == 0 ? 0 : busCode() << 4;
            case 0x06 -> 25 * 128;
            case 0x07 -> cycles() == 0 ? 0 : currentCode(shuntCode()) << 4;
            case 0x08 -> cycles() == 0 ? 0 : Math.abs(currentCode(shuntCode())) * busCode() / 16384;
            case 0x09 -> 0;
            case 0x0A -> (long) chargeCodes();
            case 0x0B -> diagnosis();
            case 0x3E -> 0x5449;
            case 0x3F -> 0x2281;
            default -> limits[pointer - 0x0C];
        };
    }

    /** Reading the register clears the flag that a conversion has completed. */
    private long diagnosis() {
        long done = cycles();
        boolean ready = done > readCycles;
        readCycles = done;
        return ready ? diagnosis | 2 : diagnosis;
    }

    private long shuntCode() {
        double volts = wiring.shuntVolts() * (1 + errors.gain()) + errors.offsetVolts()
                + noise.nextGaussian() * errors.noiseVolts() * averageFactor;
        return Math.clamp(Math.round(volts / SHUNT_STEP), -524288, 524287);
    }

    private long busCode() {
        return Math.clamp(Math.round(wiring.busVolts() * (1 + errors.busGain()) / BUS_STEP), 0, 524287);
    }

    /** CURRENT, 20 bits signed. */
    private long currentCode(long shunt) {
        return Math.clamp(Math.round(shunt * currentFactor()), -524288, 524287);
    }

    /** Codes of current for one code of shunt voltage: 312.5 nV ÷ (R × CURRENT_LSB), with R × LSB from SHUNT_CAL. */
    private double currentFactor() {
        return shuntCal == 0 ? 0 : SHUNT_STEP * 13107.2e6 / shuntCal;
    }

    /** CHARGE: current codes summed over the chip's seconds. */
    private double chargeCodes() {
        double volts = (wiring.shuntVoltSeconds() - chargeBase) * (1 + errors.gain())
                + errors.offsetVolts() * (wiring.nanos() * 1e-9 - secondsBase);
        return accumulated + Math.floor(volts / SHUNT_STEP * currentFactor() * (1 + errors.oscillator()));
    }
}
