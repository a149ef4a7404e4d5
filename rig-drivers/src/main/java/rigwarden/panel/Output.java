package rigwarden.panel;

import com.pi4j.context.Context;
import com.pi4j.exception.Pi4JException;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;

/** One order line. It is claimed with its safe level in the same request, and written only when it changes. */
public final class Output {
    private final DigitalOutput line;
    private boolean level;
    private boolean written = true;

    /**
     * Claims a line.
     *
     * @param context Pi4J's context
     * @param name unique in the context
     * @param number the controller's line number
     * @param high level in the claim: low at every start; a copied rehearsal goes on with the level that it had
     */
    public Output(Context context, String name, int number, boolean high) {
        level = high;
        line = context.create(DigitalOutput.newConfigBuilder(context)
                .id(name)
                .address(number)
                .initial(high ? DigitalState.HIGH : DigitalState.LOW)
                .shutdown(DigitalState.LOW)
                .build());
    }

    /** Sets the level; false when the write failed, and then it is written again next time. */
    public boolean set(boolean high) {
        if (written && high == level) {
            return true;
        }
        try {
            line.state(high ? DigitalState.HIGH : DigitalState.LOW);
            level = high;
            written = true;
            return true;
        } catch (Pi4JException e) {
            written = false;
            return false;
        }
    }

    /** What was written last; never what is there: that is a feedback input's to say. */
    public boolean ordered() {
        return level;
    }
}
