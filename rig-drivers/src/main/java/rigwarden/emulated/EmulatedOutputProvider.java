package rigwarden.emulated;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputBase;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;
import com.pi4j.io.gpio.digital.DigitalOutputProviderBase;
import com.pi4j.io.gpio.digital.DigitalState;

/** Makes emulated outputs; the initial level goes out with the claim. A line's state is what was written, no read-back. */
final class EmulatedOutputProvider extends DigitalOutputProviderBase {
    private final EmulatedBoard board;

    EmulatedOutputProvider(EmulatedBoard board) {
        super("rigwarden-emulated-output", "emulated output");
        this.board = board;
    }

    @Override
    public DigitalOutput create(DigitalOutputConfig config) {
        DigitalOutput line = new Line(this, config, board);
        context().registry().add(line);
        return line;
    }

    private static final class Line extends DigitalOutputBase {
        private final EmulatedBoard.LineSink sink;
        private final EmulatedBoard board;

        Line(DigitalOutputProvider provider, DigitalOutputConfig config, EmulatedBoard board) {
            super(provider, config);
            this.board = board;
            sink = board.outputs.getOrDefault(config.address(), _ -> { });
        }

        @Override
        public DigitalOutput initialize(Context context) {
            state = config().initialState() == DigitalState.HIGH ? DigitalState.HIGH : DigitalState.LOW;
            board.lineWrites++;
            sink.level(state == DigitalState.HIGH);
            return this;
        }

        @Override
        public DigitalOutput state(DigitalState level) {
            board.lineWrites++;
            state = level;
            sink.level(level == DigitalState.HIGH);
            return this;
        }
    }
}
