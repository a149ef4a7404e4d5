package rigwarden.emulated;

import com.pi4j.context.Context;
import com.pi4j.exception.InitializeException;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputBase;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.exception.IOException;
import java.util.List;

/**
 * One output line as the gpiod plugin 3.0.3 drives it: claimed together with its initial level, low when none is
 * configured, and then written once more with it. {@code state()} is the last level written, never a read-back.
 */
final class EmulatedOutput extends DigitalOutputBase {
    private final List<LineSink> sinks;
    private final Traffic traffic;

    EmulatedOutput(
            DigitalOutputProvider provider, DigitalOutputConfig config, List<LineSink> sinks, Traffic traffic) {
        super(provider, config);
        this.sinks = sinks;
        this.traffic = traffic;
    }

    @Override
    public DigitalOutput initialize(Context context) throws InitializeException {
        drive(config.initialState() == DigitalState.HIGH);
        return super.initialize(context);
    }

    @Override
    public DigitalOutput state(DigitalState state) throws IOException {
        traffic.gpioWrites++;
        drive(state == DigitalState.HIGH);
        return super.state(state);
    }

    private void drive(boolean high) {
        for (int i = 0; i < sinks.size(); i++) {
            sinks.get(i).level(high);
        }
    }
}
