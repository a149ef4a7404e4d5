package rigwarden.scripted;

import com.pi4j.io.i2c.I2C;
import com.pi4j.io.i2c.I2CBase;
import com.pi4j.io.i2c.I2CBus;
import com.pi4j.io.i2c.I2CConfig;
import com.pi4j.io.i2c.I2CProvider;
import com.pi4j.io.i2c.I2CProviderBase;

/** Pi4J's I2C over a {@link Wire}. Whatever the drivers must not use throws. */
final class ScriptedI2c extends I2CProviderBase {
    private final Wire wire;

    ScriptedI2c(Wire wire) {
        super("scripted-i2c", "scripted I2C");
        this.wire = wire;
    }

    @Override
    public I2C create(I2CConfig config) {
        I2C device = new Device(this, config, wire);
        context.registry().add(device);
        return device;
    }

    private static final class Device extends I2CBase<I2CBus> {
        private final Wire wire;

        Device(I2CProvider provider, I2CConfig config, Wire wire) {
            super(provider, config, null);
            this.wire = wire;
        }

        @Override
        public int readRegister(int register, byte[] into, int offset, int length) {
            return wire.read(device(), register, into, offset, length);
        }

        @Override
        public int writeRegister(int register, byte[] bytes, int offset, int length) {
            return wire.write(device(), register, bytes, offset, length);
        }

        @Override
        public int readRegister(int register) {
            throw new AssertionError("single-byte register read");
        }

        @Override
        public int readRegister(byte[] register, byte[] into, int offset, int length) {
            throw new AssertionError("long register read");
        }

        @Override
        public int writeRegister(int register, byte value) {
            throw new AssertionError("single-byte register write");
        }

        @Override
        public int writeRegister(byte[] register, byte[] bytes, int offset, int length) {
            throw new AssertionError("long register write");
        }

        @Override
        public int read() {
            throw new AssertionError("raw read");
        }

        @Override
        public int read(byte[] into, int offset, int length) {
            throw new AssertionError("raw read");
        }

        @Override
        public int write(byte value) {
            throw new AssertionError("raw write");
        }

        @Override
        public int write(byte[] bytes, int offset, int length) {
            throw new AssertionError("raw write");
        }
    }
}
