package rigwarden.emulated;

import com.pi4j.io.i2c.I2C;
import com.pi4j.io.i2c.I2CConfig;
import com.pi4j.io.i2c.I2CProviderBase;

/** Makes emulated I2C devices. Never listed in META-INF/services: a real board must not find it. */
final class EmulatedI2cProvider extends I2CProviderBase {
    private final EmulatedBoard board;

    EmulatedI2cProvider(EmulatedBoard board) {
        super("rigwarden-emulated-i2c", "emulated I2C");
        this.board = board;
    }

    @Override
    public I2C create(I2CConfig config) {
        I2C device = new EmulatedI2c(this, config, board);
        context().registry().add(device);
        return device;
    }
}
