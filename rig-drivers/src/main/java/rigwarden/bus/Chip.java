package rigwarden.bus;

import com.pi4j.context.Context;
import com.pi4j.exception.Pi4JException;
import com.pi4j.io.i2c.I2C;

/**
 * One chip on an I2C bus. Only register transfers that carry their own address are used: a raw write after a failed
 * select could reach another chip. Single-byte reads are never used: their result is sign-extended.
 */
public final class Chip {
    private static final int LONGEST = 8;

    private final I2C device;
    private final String name;
    private final byte[] buffer = new byte[LONGEST];

    /**
     * Claims a device.
     *
     * @param context Pi4J's context, real or emulated
     * @param bus number of the bus
     * @param address seven-bit address
     */
    public Chip(Context context, int bus, int address) {
        name = "bus " + bus + " address 0x" + Integer.toHexString(address);
        device = context.create(I2C.newConfigBuilder(context)
                .id("i2c-" + bus + "-" + Integer.toHexString(address))
                .bus(bus)
                .device(address)
                .build());
    }

    /**
     * Reads a register, most significant byte first.
     *
     * @param register its address
     * @param bytes its length, 1…7
     * @return its bits, unsigned
     * @throws BusFailure when fewer bytes came, or none
     */
    public long read(int register, int bytes) throws BusFailure {
        int got;
        try {
            got = device.readRegister(register, buffer, 0, bytes);
        } catch (Pi4JException e) {
            throw new BusFailure(name + ": no answer to a read");
        }
        if (got != bytes) {
            throw new BusFailure(name + ": " + got + " of " + bytes + " bytes");
        }
        long bits = 0;
        for (int i = 0; i < bytes; i++) {
            bits = bits << 8 | (buffer[i] & 0xFF);
            buffer[i] = 0;
        }
        return bits;
    }

    /**
     * Writes a register, most significant byte first.
     *
     * @param register its address
     * @param bits what to write
     * @param bytes its length
     * @throws BusFailure when the chip did not take all of it
     */
    public void write(int register, long bits, int bytes) throws BusFailure {
        for (int i = 0; i < bytes; i++) {
            buffer[i] = (byte) (bits >> 8 * (bytes - 1 - i));
        }
        int taken;
        try {
            taken = device.writeRegister(register, buffer, 0, bytes);
        } catch (Pi4JException e) {
            throw new BusFailure(name + ": no answer to a write");
        }
        if (taken < bytes) {
            throw new BusFailure(name + ": took " + taken + " of " + bytes + " bytes");
        }
    }

    /** Sign-extends the lowest bits of a register. */
    public static long signed(long bits, int width) {
        int shift = Long.SIZE - width;
        return bits << shift >> shift;
    }
}
