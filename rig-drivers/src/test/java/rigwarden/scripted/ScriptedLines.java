package rigwarden.scripted;

import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputBase;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalInputProvider;
import com.pi4j.io.gpio.digital.DigitalInputProviderBase;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputBase;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;
import com.pi4j.io.gpio.digital.DigitalOutputProviderBase;
import com.pi4j.io.gpio.digital.DigitalState;

/** Pi4J's digital lines over a {@link Wire}. */
final class ScriptedLines {
    private ScriptedLines() {}

    static final class Outputs extends DigitalOutputProviderBase {
        private final Wire wire;

        Outputs(Wire wire) {
            super("scripted-output", "scripted output");
            this.wire = wire;
        }

        @Override
        public DigitalOutput create(DigitalOutputConfig config) {
            DigitalOutput line = new Out(this, config, wire);
            context.registry().add(line);
            return line;
        }
    }

    static final class Inputs extends DigitalInputProviderBase {
        private final Wire wire;

        Inputs(Wire wire) {
            super("scripted-input", "scripted input");
            this.wire = wire;
        }

        @Override
        public DigitalInput create(DigitalInputConfig config) {
            DigitalInput line = new In(this, config, wire);
            context.registry().add(line);
            return line;
        }
    }

    private static final class Out extends DigitalOutputBase {
        private final Wire wire;

        Out(DigitalOutputProvider provider, DigitalOutputConfig config, Wire wire) {
            super(provider, config);
            this.wire = wire;
        }

        @Override
        public DigitalOutput state(DigitalState level) {
            wire.level(config().address(), level == DigitalState.HIGH);
            return super.state(level);
        }
    }

    private static final class In extends DigitalInputBase {
        private final Wire wire;

        In(DigitalInputProvider provider, DigitalInputConfig config, Wire wire) {
            super(provider, config);
            this.wire = wire;
        }

        @Override
        public DigitalState state() {
            Boolean high = wire.levels.get(config().address());
            return high == null ? DigitalState.UNKNOWN : DigitalState.getState(high);
        }
    }
}
