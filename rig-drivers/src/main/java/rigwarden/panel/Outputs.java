package rigwarden.panel;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Rig;
import rigwarden.warden.Failure;

/** The output lines. A line is written when its level changes, or when its last write did not go out. */
public final class Outputs {
    private final List<Output> all;
    private final DigitalOutput[] lines;
    private long high;
    private long unsure;

    private Outputs(List<Output> all) {
        this.all = all;
        lines = new DigitalOutput[all.size()];
    }

    /**
     * Claims every line low, in the claim request itself. Comes before any chip is touched. One line that cannot be
     * claimed does not keep the others from being claimed low.
     *
     * @throws BusFailure naming the lines that could not be claimed
     */
    public static Outputs claim(Context context, Rig rig) throws BusFailure {
        return claim(context, rig, 0);
    }

    /** Claims the lines of a copied rig at the levels that they had, as bits. For a rehearsal only. */
    public static Outputs resume(Context context, Rig rig, long high) throws BusFailure {
        return claim(context, rig, high);
    }

    private static Outputs claim(Context context, Rig rig, long high) throws BusFailure {
        Outputs outputs = new Outputs(Output.of(rig));
        StringBuilder refused = new StringBuilder();
        for (Output output : outputs.all) {
            try {
                outputs.lines[output.place()] = context.create(DigitalOutput.newConfigBuilder(context)
                        .id("output-" + output.name())
                        .address(output.line(rig))
                        .initial(DigitalState.getState((high & output.bit()) != 0))
                        .shutdown(DigitalState.LOW)
                        .build());
            } catch (RuntimeException e) {
                refused.append(output.name()).append(" on line ").append(output.line(rig)).append(": ")
                        .append(e.getMessage()).append("; ");
            }
        }
        if (!refused.isEmpty()) {
            throw new BusFailure(Failure.NO_ANSWER, "outputs not claimed: " + refused);
        }
        outputs.high = high;
        return outputs;
    }

    /** Every output, in the order in which they are let go. */
    public List<Output> all() {
        return all;
    }

    /**
     * Sets a line.
     *
     * @return true when the line has this level, as far as the library says; never throws
     */
    public boolean set(Output output, boolean up) {
        if (isHigh(output) == up && (unsure & output.bit()) == 0) {
            return true;
        }
        return write(output, up);
    }

    /** Changes the heartbeat's level once; false when that did not go out. */
    public boolean toggleHeartbeat() {
        return write(Output.HEARTBEAT, !isHigh(Output.HEARTBEAT));
    }

    private boolean write(Output output, boolean up) {
        unsure |= output.bit();
        try {
            lines[output.place()].state(DigitalState.getState(up));
        } catch (RuntimeException | Error e) {
            return false;
        }
        unsure &= ~output.bit();
        if (up) {
            high |= output.bit();
        } else {
            high &= ~output.bit();
        }
        return true;
    }

    /** Whether a line was last written high. */
    public boolean isHigh(Output output) {
        return (high & output.bit()) != 0;
    }

    /** Lines that were last written high, as bits. */
    public long high() {
        return high;
    }
}
