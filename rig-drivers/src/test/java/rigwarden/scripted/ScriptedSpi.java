package rigwarden.scripted;

import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiBase;
import com.pi4j.io.spi.SpiConfig;
import com.pi4j.io.spi.SpiProvider;
import com.pi4j.io.spi.SpiProviderBase;

/** Pi4J's SPI over a {@link Wire}. Whatever the drivers must not use throws. */
final class ScriptedSpi extends SpiProviderBase {
    private final Wire wire;

    ScriptedSpi(Wire wire) {
        super("scripted-spi", "scripted SPI");
        this.wire = wire;
    }

    @Override
    public Spi create(SpiConfig config) {
        Spi device = new Device(this, config, wire);
        context.registry().add(device);
        return device;
    }

    private static final class Device extends SpiBase {
        private final Wire wire;

        Device(SpiProvider provider, SpiConfig config, Wire wire) {
            super(provider, config);
            this.wire = wire;
        }

        @Override
        public int transfer(byte[] write, int writeOffset, byte[] read, int readOffset, int length) {
            if (writeOffset != 0 || readOffset != 0) {
                throw new AssertionError("a transfer with offsets");
            }
            return wire.transfer(config().address(), write, read, length);
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
