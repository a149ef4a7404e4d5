package rigwarden.emulated;

import com.pi4j.io.i2c.I2C;
import com.pi4j.io.i2c.I2CConfig;
import com.pi4j.io.i2c.I2CProviderBase;

/** Creates I2C devices on the board's buses. */
final class EmulatedI2cProvider extends I2CProviderBase {
    private final EmulatedBoard board;

    EmulatedI2cProvider(EmulatedBoard board) {
        super("emulated-i2c", "Emulated I2C");
        this.board = board;
    }

    @Override
    public I2C create(I2CConfig config) {
        EmulatedI2c device = new EmulatedI2c(board.existingBus(config.getBus()), this, config);
        context.registry().add(device);
        return device;
    }
}
