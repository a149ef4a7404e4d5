package rigwarden.emulated;

import com.pi4j.exception.Pi4JException;
import com.pi4j.io.i2c.I2C;
import com.pi4j.io.i2c.I2CBase;
import com.pi4j.io.i2c.I2CBus;
import com.pi4j.io.i2c.I2CConfig;
import com.pi4j.io.i2c.I2CProvider;
import java.util.concurrent.Callable;

/**
 * One emulated device that fails as the official plug-in fails: no answer is an unchecked exception with the errno in its
 * text only; a single byte is sign-extended; {@code write(data, offset, length)} ignores its length; a raw transfer after
 * a failed select goes to the chip selected before, while register transfers carry their own address.
 */
final class EmulatedI2c extends I2CBase<I2CBus> implements I2C {
    private final EmulatedBoard board;
    private final int bus;
    private final int address;
    private final byte[] pointer = new byte[1];
    private final byte[] frame = new byte[33];

    EmulatedI2c(I2CProvider provider, I2CConfig config, EmulatedBoard board) {
        super(provider, config, new SharedBus());
        this.board = board;
        bus = config.bus();
        address = config.device();
    }

    private I2cTarget target() {
        I2cTarget chip = board.chips.get(EmulatedBoard.key(bus, address));
        if (chip == null) {
            throw noAnswer();
        }
        return chip;
    }

    private Pi4JException noAnswer() {
        return new Pi4JException("Could not write SMBus command. Errno 121, device 0x" + Integer.toHexString(address));
    }

    @Override
    public int readRegister(int register, byte[] buffer, int offset, int length) {
        board.registerReads++;
        I2cTarget chip = target();
        pointer[0] = (byte) register;
        if (chip.written(pointer, 0, 1) != 1) {
            throw noAnswer();
        }
        int got = chip.read(buffer, offset, length);
        if (got < 0) {
            throw noAnswer();
        }
        return got;
    }

    @Override
    public int readRegister(byte[] register, byte[] buffer, int offset, int length) {
        return readRegister(register[0], buffer, offset, length);
    }

    @Override
    public int readRegister(int register) {
        byte[] one = new byte[1];
        readRegister(register, one, 0, 1);
        return one[0];
    }

    @Override
    public int writeRegister(int register, byte[] data, int offset, int length) {
        board.registerWrites++;
        I2cTarget chip = target();
        frame[0] = (byte) register;
        System.arraycopy(data, offset, frame, 1, length);
        int taken = chip.written(frame, 0, length + 1);
        if (taken < 0) {
            throw noAnswer();
        }
        return taken - 1;
    }

    @Override
    public int writeRegister(byte[] register, byte[] data, int offset, int length) {
        return writeRegister(register[0], data, offset, length);
    }

    @Override
    public int writeRegister(int register, byte value) {
        return writeRegister(register, new byte[] {value}, 0, 1);
    }

    /** The plug-in remembers the new address before the select has succeeded. */
    private I2cTarget select() {
        board.rawTransfers++;
        Integer before = board.remembered.put(bus, address);
        if (before == null || before != address) {
            I2cTarget chip = board.chips.get(EmulatedBoard.key(bus, address));
            if (chip == null) {
                throw noAnswer();
            }
            board.selected.put(bus, chip);
        }
        I2cTarget selected = board.selected.get(bus);
        if (selected == null) {
            throw noAnswer();
        }
        return selected;
    }

    @Override
    public int write(byte value) {
        return select().written(new byte[] {value}, 0, 1);
    }

    @Override
    public int write(byte[] data, int offset, int length) {
        return select().written(data, offset, data.length - offset);
    }

    @Override
    public int read() {
        byte[] one = new byte[1];
        return select().read(one, 0, 1) == 1 ? one[0] : -1;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) {
        return select().read(buffer, offset, length);
    }

    /** One thread drives the bench; the bus needs no lock of its own. */
    private static final class SharedBus implements I2CBus {
        @Override
        public <R> R execute(I2C device, Callable<R> action) {
            try {
                return action.call();
            } catch (Exception e) {
                throw new Pi4JException(e);
            }
        }
    }
}
