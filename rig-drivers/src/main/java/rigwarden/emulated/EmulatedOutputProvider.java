package rigwarden.emulated;

import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProviderBase;

/** Creates digital outputs on the board's lines. */
final class EmulatedOutputProvider extends DigitalOutputProviderBase {
    private final EmulatedBoard board;

    EmulatedOutputProvider(EmulatedBoard board) {
        super("emulated-output", "Emulated digital output");
        this.board = board;
    }

    @Override
    public DigitalOutput create(DigitalOutputConfig config) {
        EmulatedOutput output = new EmulatedOutput(this, config, board.sinks(config.address()), board.traffic());
        context.registry().add(output);
        return output;
    }
}
