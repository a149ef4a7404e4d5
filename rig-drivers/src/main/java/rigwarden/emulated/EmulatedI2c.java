package rigwarden.emulated;

import com.pi4j.io.i2c.I2CBase;
import com.pi4j.io.i2c.I2CConfig;
import com.pi4j.io.i2c.I2CProvider;
import java.util.Objects;

/**
 * One I2C device of a driver, call for call what the linuxfs plugin 3.0.3 makes of it: single-byte reads come back
 * unsigned, a register write of an array answers the pointer byte too, a register read the length asked for. Like the
 * plugin's, it goes on working after {@code close}.
 */
final class EmulatedI2c extends I2CBase<EmulatedI2cBus> {
    private static final int SCRATCH = 64;

    private final EmulatedI2cBus bus;
    private final int device;
    private final byte[] pointer = new byte[1];
    private final byte[] single = new byte[1];
    private final byte[] scratch = new byte[SCRATCH];

    EmulatedI2c(EmulatedI2cBus bus, I2CProvider provider, I2CConfig config) {
        super(provider, config, bus);
        this.bus = bus;
        this.device = config.device();
    }

    @Override
    public int write(byte data) {
        bus.traffic.plainWrites++;
        single[0] = data;
        return bus.write(device, single, 0, 1);
    }

    @Override
    public int write(byte[] data, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, data.length);
        bus.traffic.plainWrites++;
        return bus.write(device, data, offset, length);
    }

    @Override
    public int read() {
        bus.traffic.plainReads++;
        return bus.read(device, single, 0, 1) < 1 ? -1 : single[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, into.length);
        bus.traffic.plainReads++;
        return bus.read(device, into, offset, length);
    }

    @Override
    public int writeRegister(int register, byte data) {
        bus.traffic.registerWrites++;
        scratch[0] = (byte) register;
        scratch[1] = data;
        return bus.write(device, scratch, 0, 2);
    }

    @Override
    public int writeRegister(int register, byte[] data, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, data.length);
        bus.traffic.registerWrites++;
        byte[] frame = length < SCRATCH ? scratch : new byte[length + 1];
        frame[0] = (byte) register;
        System.arraycopy(data, offset, frame, 1, length);
        return bus.write(device, frame, 0, length + 1);
    }

    @Override
    public int writeRegister(byte[] register, byte[] data, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, data.length);
        bus.traffic.registerWrites++;
        byte[] frame = new byte[register.length + length];
        System.arraycopy(register, 0, frame, 0, register.length);
        System.arraycopy(data, offset, frame, register.length, length);
        return bus.write(device, frame, 0, frame.length) - register.length;
    }

    @Override
    public int readRegister(int register) {
        bus.traffic.registerReads++;
        pointer[0] = (byte) register;
        bus.writeRead(device, pointer, 1, single, 0, 1);
        return single[0] & 0xFF;
    }

    @Override
    public int readRegister(int register, byte[] into, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, into.length);
        bus.traffic.registerReads++;
        pointer[0] = (byte) register;
        return bus.writeRead(device, pointer, 1, into, offset, length);
    }

    @Override
    public int readRegister(byte[] register, byte[] into, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, into.length);
        bus.traffic.registerReads++;
        return bus.writeRead(device, register, register.length, into, offset, length);
    }

    /** No input or output, as in the plugin: always 0. */
    @Override
    public int writeReadRegisterWord(int register, int word) {
        return 0;
    }
}
