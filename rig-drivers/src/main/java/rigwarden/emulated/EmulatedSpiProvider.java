package rigwarden.emulated;

import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiConfig;
import com.pi4j.io.spi.SpiProviderBase;

/** Creates SPI devices on the board's buses: opened first and registered then, so that a refused one has set its mode. */
final class EmulatedSpiProvider extends SpiProviderBase {
    private final EmulatedBoard board;

    EmulatedSpiProvider(EmulatedBoard board) {
        super("emulated-spi", "Emulated SPI");
        this.board = board;
    }

    @Override
    public Spi create(SpiConfig config) {
        EmulatedSpi device = new EmulatedSpi(board, this, config);
        device.open();
        context.registry().add(device);
        return device;
    }
}
