package rigwarden.panel;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Panel;
import rigwarden.warden.Failure;

/** The output lines. A line is written when its level changes, or when its last write did not go out. */
public final class Outputs {
    private final Map<Output, DigitalOutput> lines = new EnumMap<>(Output.class);
    private final Set<Output> high = EnumSet.noneOf(Output.class);
    private final Set<Output> unsure = EnumSet.noneOf(Output.class);

    private Outputs() {}

    /**
     * Claims every line low, in the claim request itself. Comes before any chip is touched. One line that cannot be
     * claimed does not keep the others from being claimed low.
     *
     * @throws BusFailure naming the lines that could not be claimed
     */
    public static Outputs claim(Context context, Panel panel) throws BusFailure {
        return claim(context, panel, Set.of());
    }

    /** Claims the lines of a copied rig at the levels that they had. For a rehearsal only. */
    public static Outputs resume(Context context, Panel panel, Set<Output> high) throws BusFailure {
        return claim(context, panel, high);
    }

    private static Outputs claim(Context context, Panel panel, Set<Output> high) throws BusFailure {
        Outputs outputs = new Outputs();
        StringBuilder refused = new StringBuilder();
        for (Output output : Output.values()) {
            try {
                outputs.lines.put(output, context.create(DigitalOutput.newConfigBuilder(context)
                        .id("output-" + output)
                        .address(output.line(panel))
                        .initial(DigitalState.getState(high.contains(output)))
                        .shutdown(DigitalState.LOW)
                        .build()));
            } catch (RuntimeException e) {
                refused.append(output).append(" on line ").append(output.line(panel)).append(": ")
                        .append(e.getMessage()).append("; ");
            }
        }
        if (!refused.isEmpty()) {
            throw new BusFailure(Failure.NO_ANSWER, "outputs not claimed: " + refused);
        }
        outputs.high.addAll(high);
        return outputs;
    }

    /**
     * Sets a line.
     *
     * @return true when the line has this level, as far as the library says; never throws
     */
    public boolean set(Output output, boolean up) {
        if (high.contains(output) == up && !unsure.contains(output)) {
            return true;
        }
        return write(output, up);
    }

    /** Changes the heartbeat's level once; false when that did not go out. */
    public boolean toggleHeartbeat() {
        return write(Output.HEARTBEAT, !high.contains(Output.HEARTBEAT));
    }

    private boolean write(Output output, boolean up) {
        unsure.add(output);
        try {
            lines.get(output).state(DigitalState.getState(up));
        } catch (RuntimeException | Error e) {
            return false;
        }
        unsure.remove(output);
        if (up) {
            high.add(output);
        } else {
            high.remove(output);
        }
        return true;
    }

    /** Whether a line was last written high. */
    public boolean isHigh(Output output) {
        return high.contains(output);
    }

    /** Lines that were last written high. */
    public Set<Output> high() {
        return Set.copyOf(high);
    }
}
