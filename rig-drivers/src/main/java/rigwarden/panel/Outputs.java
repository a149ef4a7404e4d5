package rigwarden.panel;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.List;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Rig;
import rigwarden.warden.Failure;

/**
 * The output lines. A line is written when its level changes, or when its last write did not go out. When an expander has
 * lost its configuration its outputs are low, and no coil is raised until every output has been ordered low: a contactor
 * that fell must not close again where the run left off.
 */
public final class Outputs {
    private static final long HARMLESS = Output.SOUNDER.bit() | Output.HEARTBEAT.bit();

    private final List<Output> all;
    private final OutputLine[] lines;
    private Expanders expanders = new Expanders();
    private long high;
    private long unsure;
    private boolean fallen;
    private boolean resting;
    private boolean restsHigh = true;

    private Outputs(List<Output> all) {
        this.all = all;
        lines = new OutputLine[all.size()];
    }

    /**
     * Claims every line low, those of the header in the claim request itself, before any chip is touched; an expander is a
     * chip, and comes after them. One line that cannot be claimed does not keep the others from being claimed low.
     *
     * @throws BusFailure naming the lines that could not be claimed
     */
    public static Outputs claim(Context context, Rig rig) throws BusFailure {
        return claim(context, rig, Optional.empty());
    }

    /** Claims the lines of a copied rig at the levels that they had. For a rehearsal only. */
    public static Outputs resume(Context context, Rig rig, OutputsState state) throws BusFailure {
        return claim(context, rig, Optional.of(state));
    }

    private static Outputs claim(Context context, Rig rig, Optional<OutputsState> before) throws BusFailure {
        StringBuilder refused = new StringBuilder();
        Outputs outputs = new Outputs(Output.of(rig));
        long high = before.map(OutputsState::high).orElse(0L);
        for (Output output : outputs.all) {
            int line = output.line(rig);
            try {
                if (rig.wires().expander(line).isEmpty()) {
                    outputs.lines[output.place()] = header(context, output, line, (high & output.bit()) != 0);
                }
            } catch (RuntimeException e) {
                refused.append(output.name()).append(" on line ").append(line).append(": ")
                        .append(e.getMessage()).append("; ");
            }
        }
        outputs.expanders = Expanders.claim(context, rig, before, refused);
        for (Output output : outputs.all) {
            int line = output.line(rig);
            outputs.expanders.of(line).ifPresent(own -> outputs.lines[output.place()] = up -> own.set(line, up));
        }
        if (!refused.isEmpty()) {
            throw new BusFailure(Failure.NO_ANSWER, "outputs not claimed: " + refused);
        }
        outputs.high = high;
        outputs.unsure = before.map(OutputsState::unsure).orElse(0L);
        outputs.fallen = before.map(OutputsState::fallen).orElse(false);
        outputs.resting = before.map(OutputsState::resting).orElse(false);
        outputs.restsHigh = before.map(OutputsState::restsHigh).orElse(true);
        return outputs;
    }

    private static OutputLine header(Context context, Output output, int line, boolean up) {
        DigitalOutput own = context.create(DigitalOutput.newConfigBuilder(context)
                .id("output-" + output.name())
                .address(line)
                .initial(DigitalState.getState(up))
                .shutdown(DigitalState.LOW)
                .build());
        return level -> own.state(DigitalState.getState(level));
    }

    /** The expanders that some of these lines are on. */
    public Expanders expanders() {
        return expanders;
    }

    /** Looks at the expanders, once a scan: what fell is known to have fallen. */
    public void refresh() {
        if (!expanders.refresh()) {
            fallen = true;
            for (Output output : all) {
                unsure |= output.bit();
            }
        }
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
        if (up && fallen && (HARMLESS & output.bit()) == 0) {
            return false;
        }
        boolean written = write(output, up);
        fallen &= ((unsure | high) & ~HARMLESS) != 0;
        return written;
    }

    /** Changes the heartbeat's level once; false when that did not go out. */
    public boolean toggleHeartbeat() {
        resting = false;
        return write(Output.HEARTBEAT, !isHigh(Output.HEARTBEAT));
    }

    /**
     * Leaves the heartbeat on one level while beats are withheld: low the first time, then in turn, since a stage may let go on one level only. At most
     * one more change goes out, with the first call after a beat.
     */
    public boolean restHeartbeat() {
        if (!resting) {
            resting = true;
            restsHigh = !restsHigh;
        }
        return isHigh(Output.HEARTBEAT) == restsHigh || write(Output.HEARTBEAT, restsHigh);
    }

    private boolean write(Output output, boolean up) {
        unsure |= output.bit();
        try {
            lines[output.place()].drive(up);
        } catch (BusFailure | RuntimeException | Error e) {
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

    /** All that is known, for a copy. */
    public OutputsState state() {
        return new OutputsState(high, unsure, fallen, resting, restsHigh, expanders.latches());
    }
}
