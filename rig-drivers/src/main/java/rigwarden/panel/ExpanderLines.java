package rigwarden.panel;

import com.pi4j.context.Context;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.chip.mcp23017.Mcp23017;
import rigwarden.chip.mcp23017.Mcp23017Codec;
import rigwarden.rig.Expander;
import rigwarden.rig.Rig;
import rigwarden.warden.Failure;

/** One expander of the panel: its pins as lines, read once a scan. */
final class ExpanderLines {
    private final Expander expander;
    private final Mcp23017 chip;
    private int pins;
    private Optional<BusFailure> failure = Optional.of(new BusFailure(Failure.NOT_READ, "the expander was not read yet"));

    private ExpanderLines(Expander expander, Mcp23017 chip) {
        this.expander = expander;
        this.chip = chip;
    }

    /**
     * Takes up an expander.
     *
     * @param latch what its driver last wrote; where there is nothing the chip is configured, all low
     */
    static ExpanderLines claim(Context context, Rig rig, Expander expander, Optional<Integer> latch) throws BusFailure {
        int outputs = 0;
        for (Output output : Output.of(rig)) {
            if (expander.has(output.line(rig))) {
                outputs |= bit(expander, output.line(rig));
            }
        }
        Mcp23017 chip = new Mcp23017(Chip.at(context, expander.bus(), expander.address()), outputs, latch.orElse(0));
        if (latch.isEmpty()) {
            chip.configure();
        }
        return new ExpanderLines(expander, chip);
    }

    private static int bit(Expander expander, int line) {
        return Mcp23017Codec.bit(line - expander.firstLine());
    }

    Expander expander() {
        return expander;
    }

    int latch() {
        return chip.latch();
    }

    /** Reads all pins. Returns false when its outputs fell, since it had lost its configuration. */
    boolean refresh() {
        int latch = chip.latch();
        try {
            pins = chip.read();
            failure = Optional.empty();
            return true;
        } catch (BusFailure e) {
            failure = Optional.of(e);
            return e.why() != Failure.CONFIGURATION_LOST && chip.latch() == latch;
        } catch (RuntimeException e) {
            failure = Optional.of(new BusFailure(Failure.NONSENSE, "expander " + expander.name() + ": " + e.getMessage()));
            return false;
        }
    }

    /** Level of a line in the scan's reading: 1 high, 0 low. */
    int level(int line) throws BusFailure {
        if (failure.isPresent()) {
            throw failure.get();
        }
        return (pins & bit(expander, line)) != 0 ? 1 : 0;
    }

    void set(int line, boolean up) throws BusFailure {
        int bit = bit(expander, line);
        chip.write(up ? chip.latch() | bit : chip.latch() & ~bit);
    }
}
