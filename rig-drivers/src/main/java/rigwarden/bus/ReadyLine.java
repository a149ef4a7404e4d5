package rigwarden.bus;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.gpio.digital.PullResistance;
import rigwarden.warden.Failure;

/** A chip's own line that goes low when a conversion is done. It is read when somebody asks; edges are not used. */
public final class ReadyLine {
    private final DigitalInput line;
    private final int number;

    private ReadyLine(DigitalInput line, int number) {
        this.line = line;
        this.number = number;
    }

    /**
     * Claims the line.
     *
     * @param number of the controller's line
     * @throws BusFailure when it cannot be claimed
     */
    public static ReadyLine at(Context context, int number) throws BusFailure {
        try {
            return new ReadyLine(context.create(DigitalInput.newConfigBuilder(context)
                    .id("ready-" + number)
                    .address(number)
                    .pull(PullResistance.OFF)
                    .debounce(0L)
                    .build()), number);
        } catch (RuntimeException e) {
            throw new BusFailure(Failure.NO_ANSWER, "ready line " + number + " not claimed: " + e.getMessage());
        }
    }

    /**
     * Whether it says ready.
     *
     * @throws BusFailure when the library cannot say
     */
    public boolean isLow() throws BusFailure {
        DigitalState state;
        try {
            state = line.state();
        } catch (RuntimeException e) {
            throw new BusFailure(Failure.NO_ANSWER, "ready line " + number + " not read: " + e.getMessage());
        }
        return switch (state) {
            case LOW -> true;
            case HIGH -> false;
            case UNKNOWN -> throw new BusFailure(Failure.NO_ANSWER, "ready line " + number + " is in no known state");
        };
    }
}
