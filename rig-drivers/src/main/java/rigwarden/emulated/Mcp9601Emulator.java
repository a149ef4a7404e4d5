package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * An MCP9601 as its data sheet describes it (DS20005426): it tells an open from a working couple, and keeps its last
 * temperature when it is open, which is the trap.
 */
public final class Mcp9601Emulator implements I2cTarget {
    /** What the couple and the chip feel. */
    public interface Wiring {
        long nanos();

        double hotCelsius();

        double coldCelsius();

        boolean open();

        boolean shorted();
    }

    /**
     * How this specimen errs.
     *
     * @param kelvin of the whole chain
     * @param noiseKelvin rms of one conversion
     */
    public record Errors(double kelvin, double noiseKelvin) {}

    /** Conversion times of 18, 16, 14, 12 bits, ns; from memory (DS20005426, electrical characteristics). */
    private static final long[] TIMES = {320_000_000L, 80_000_000L, 20_000_000L, 5_000_000L};

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private int pointer;
    private int sensor;
    private int device;
    private int hot;
    private boolean updated;
    private long nextNanos;

    public Mcp9601Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        nextNanos = wiring.nanos() + TIMES[0];
    }

    /** This chip in this state on other wires. */
    public Mcp9601Emulator copy(Wiring other) {
        Mcp9601Emulator copy = new Mcp9601Emulator(other, errors, noise.copy());
        copy.pointer = pointer;
        copy.sensor = sensor;
        copy.device = device;
        copy.hot = hot;
        copy.updated = updated;
        copy.nextNanos = nextNanos;
        return copy;
    }

    /** The supply was gone for a moment. */
    public void powerOnReset() {
        sensor = 0;
        device = 0;
        hot = 0;
        updated = false;
        nextNanos = wiring.nanos() + TIMES[0];
    }

    private void settle() {
        if (wiring.nanos() < nextNanos) {
            return;
        }
        long time = TIMES[device >> 5 & 3];
        nextNanos += ((wiring.nanos() - nextNanos) / time + 1) * time;
        if (!wiring.open()) {
            double asTypeT = (sensor >> 4 & 7) == 2 ? wiring.hotCelsius() : wiring.coldCelsius();
            double seen = wiring.shorted() ? wiring.coldCelsius() : asTypeT;
            hot = (int) Math.round((seen + errors.kelvin() + noise.nextGaussian() * errors.noiseKelvin()) * 16);
            updated = true;
        }
    }

    @Override
    public int written(byte[] bytes, int offset, int length) {
        settle();
        pointer = bytes[offset] & 0xFF;
        boolean known = pointer <= 0x06 || pointer == 0x20;
        if (!known || length > 2) {
            return -1;
        }
        if (length == 2) {
            int value = bytes[offset + 1] & 0xFF;
            switch (pointer) {
                case 0x04 -> updated = updated && (value & 0x40) != 0;
                case 0x05 -> sensor = value & 0x77;
                case 0x06 -> {
                    device = value;
                    nextNanos = wiring.nanos() + TIMES[device >> 5 & 3];
                }
                default -> {
                    return -1;
                }
            }
        }
        return length;
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        settle();
        int cold = (int) Math.round(wiring.coldCelsius() * 16);
        int status = (updated ? 0x40 : 0) | (wiring.shorted() ? 0x20 : 0) | (wiring.open() ? 0x10 : 0);
        return switch (pointer) {
            case 0x00 -> give(into, offset, length, hot, 2);
            case 0x01 -> give(into, offset, length, hot - cold, 2);
            case 0x02 -> give(into, offset, length, cold, 2);
            case 0x03 -> give(into, offset, length, 0, 3);
            case 0x04 -> give(into, offset, length, status, 1);
            case 0x05 -> give(into, offset, length, sensor, 1);
            case 0x06 -> give(into, offset, length, device, 1);
            case 0x20 -> give(into, offset, length, 0x4110, 2);
            default -> -1;
        };
    }

    private static int give(byte[] into, int offset, int length, int word, int width) {
        int bytes = Math.min(width, length);
        for (int i = 0; i < bytes; i++) {
            into[offset + i] = (byte) (word >> 8 * (width - 1 - i));
        }
        return bytes;
    }
}
