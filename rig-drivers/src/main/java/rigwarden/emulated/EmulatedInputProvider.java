package rigwarden.emulated;

import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputBase;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalInputProvider;
import com.pi4j.io.gpio.digital.DigitalInputProviderBase;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.function.BooleanSupplier;

/** Makes emulated inputs. */
final class EmulatedInputProvider extends DigitalInputProviderBase {
    private final EmulatedBoard board;

    EmulatedInputProvider(EmulatedBoard board) {
        super("rigwarden-emulated-input", "emulated input");
        this.board = board;
    }

    @Override
    public DigitalInput create(DigitalInputConfig config) {
        DigitalInput line = new Line(this, config, board);
        context().registry().add(line);
        return line;
    }

    private static final class Line extends DigitalInputBase {
        private final BooleanSupplier level;
        private final EmulatedBoard board;

        Line(DigitalInputProvider provider, DigitalInputConfig config, EmulatedBoard board) {
            super(provider, config);
            this.board = board;
            level = board.inputs.getOrDefault(config.address(), () -> false);
        }

        @Override
        public DigitalState state() {
            board.lineReads++;
            return level.getAsBoolean() ? DigitalState.HIGH : DigitalState.LOW;
        }
    }
}
