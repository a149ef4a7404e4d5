package rigwarden.emulated;

import com.pi4j.io.gpio.digital.DigitalInputBase;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalInputProvider;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.function.BooleanSupplier;

/** One input line, read when asked. No listener is ever called: poll, as on the real board. */
final class EmulatedInput extends DigitalInputBase {
    private final BooleanSupplier high;
    private final Traffic traffic;

    EmulatedInput(DigitalInputProvider provider, DigitalInputConfig config, BooleanSupplier high, Traffic traffic) {
        super(provider, config);
        this.high = high;
        this.traffic = traffic;
    }

    @Override
    public DigitalState state() {
        traffic.gpioReads++;
        return high.getAsBoolean() ? DigitalState.HIGH : DigitalState.LOW;
    }
}
