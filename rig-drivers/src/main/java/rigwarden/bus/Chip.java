package rigwarden.bus;

import com.pi4j.context.Context;
import com.pi4j.io.i2c.I2C;
import java.util.Arrays;
import rigwarden.warden.Failure;

/**
 * One I2C device. Only register reads (write and read in one transfer, which carries its own address) and register
 * writes are used: a single-byte read is sign-extended by the library, and a raw write can reach another chip after
 * a failed select. Not for more than one thread.
 */
public final class Chip implements AutoCloseable {
    private static final int LONGEST = 8;

    private final I2C wire;
    private final byte[] buffer = new byte[LONGEST];
    /** The select failed: a plain write would go to the chip that was selected before, and is never made again. */
    private boolean barred;

    private Chip(I2C wire) {
        this.wire = wire;
    }

    /**
     * Opens a device; nothing is sent.
     *
     * @param context the Pi4J context, which this class neither makes nor shuts down
     * @param bus number of the I2C bus
     * @param address 7 bit address
     * @throws BusFailure when the bus cannot be opened or the address is taken
     */
    public static Chip at(Context context, int bus, int address) throws BusFailure {
        try {
            I2C wire = context.create(I2C.newConfigBuilder(context)
                    .id("i2c-" + bus + "-" + Integer.toHexString(address))
                    .bus(bus)
                    .device(address)
                    .build());
            return new Chip(wire);
        } catch (RuntimeException e) {
            throw new BusFailure(Failure.NO_ANSWER, "bus " + bus + ", address " + Integer.toHexString(address)
                    + "h: not opened: " + e.getMessage());
        }
    }

    /**
     * Reads a register, most significant byte first.
     *
     * @param length count of bytes, 1…7
     * @return the bytes as one unsigned number
     * @throws BusFailure when the chip did not answer or answered short
     */
    public long read(int register, int length) throws BusFailure {
        Arrays.fill(buffer, (byte) 0);
        int count;
        try {
            count = wire.readRegister(register, buffer, 0, length);
        } catch (RuntimeException e) {
            throw failed("register " + Integer.toHexString(register) + "h not read", e);
        }
        if (count != length) {
            throw failure("register " + Integer.toHexString(register) + "h: " + count + " of " + length + " bytes");
        }
        long value = 0;
        for (int i = 0; i < length; i++) {
            value = value << 8 | (buffer[i] & 0xFF);
        }
        return value;
    }

    /** Reads one byte, 0…FFh. */
    public int readByte(int register) throws BusFailure {
        return (int) read(register, 1);
    }

    /** Reads a 16 bit register, 0…FFFFh. */
    public int readWord(int register) throws BusFailure {
        return (int) read(register, 2);
    }

    /** Writes one byte. */
    public void writeByte(int register, int value) throws BusFailure {
        buffer[0] = (byte) value;
        write(register, 1);
    }

    /** Writes a 16 bit register, most significant byte first. */
    public void writeWord(int register, int value) throws BusFailure {
        buffer[0] = (byte) (value >> 8);
        buffer[1] = (byte) value;
        write(register, 2);
    }

    private void write(int register, int length) throws BusFailure {
        if (barred) {
            throw new BusFailure(Failure.NO_ANSWER, Trouble.HELD_BY_KERNEL, this + ": not written, since "
                    + Trouble.HELD_BY_KERNEL.words());
        }
        int count;
        try {
            count = wire.writeRegister(register, buffer, 0, length);
        } catch (RuntimeException e) {
            throw failed("register " + Integer.toHexString(register) + "h not written", e);
        }
        if (count < length) {
            throw failure("register " + Integer.toHexString(register) + "h: " + count + " of " + length
                    + " bytes written");
        }
    }

    private BusFailure failed(String what, RuntimeException thrown) {
        Trouble trouble = Trouble.of(thrown);
        barred |= trouble == Trouble.HELD_BY_KERNEL;
        return new BusFailure(Failure.NO_ANSWER, trouble, this + ": " + what + ": " + trouble.words() + " ("
                + thrown.getMessage() + ")");
    }

    private BusFailure failure(String what) {
        return new BusFailure(Failure.NO_ANSWER, this + ": " + what);
    }

    @Override
    public void close() {
        wire.close();
    }

    /** Where the chip is, for messages. */
    @Override
    public String toString() {
        return "bus " + wire.bus() + ", address " + Integer.toHexString(wire.device()) + "h";
    }
}
