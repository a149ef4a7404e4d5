package rigwarden.panel;

import com.pi4j.context.Context;
import com.pi4j.exception.Pi4JException;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.gpio.digital.PullResistance;
import rigwarden.bus.NoReading;
import rigwarden.warden.Failure;

/** One state line, polled in the scan. A cut wire reads low: loop open, coil supply dead, contactor open, not armed. */
public final class Input {
    private final DigitalInput line;

    public Input(Context context, String name, int number) {
        line = context.create(DigitalInput.newConfigBuilder(context)
                .id(name)
                .address(number)
                .pull(PullResistance.PULL_DOWN)
                .build());
    }

    /**
     * Reads the line.
     *
     * @return 1 high, 0 low
     * @throws NoReading when it cannot be read
     */
    public long read() throws NoReading {
        try {
            DigitalState state = line.state();
            if (state == DigitalState.UNKNOWN) {
                throw new NoReading(Failure.NO_ANSWER);
            }
            return state == DigitalState.HIGH ? 1 : 0;
        } catch (Pi4JException e) {
            throw new NoReading(Failure.NO_ANSWER);
        }
    }
}
