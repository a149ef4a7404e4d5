package rigwarden.emulated;

import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalInputProviderBase;
import com.pi4j.io.gpio.digital.PullResistance;
import java.util.function.BooleanSupplier;

/** Creates digital inputs on the board's lines. */
final class EmulatedInputProvider extends DigitalInputProviderBase {
    private final EmulatedBoard board;

    EmulatedInputProvider(EmulatedBoard board) {
        super("emulated-input", "Emulated digital input");
        this.board = board;
    }

    @Override
    public DigitalInput create(DigitalInputConfig config) {
        boolean pulledUp = config.getPull() == PullResistance.PULL_UP;
        BooleanSupplier high = board.level(config.address()).orElse(() -> pulledUp);
        EmulatedInput input = new EmulatedInput(this, config, high, board.traffic());
        context.registry().add(input);
        return input;
    }
}
