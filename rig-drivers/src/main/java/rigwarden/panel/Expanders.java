package rigwarden.panel;

import com.pi4j.context.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Expander;
import rigwarden.rig.Rig;

/** The expanders of a panel. */
public final class Expanders {
    private final List<ExpanderLines> all = new ArrayList<>();

    Expanders() {}

    /** Takes up every expander that can be; says of the others why not. */
    static Expanders claim(Context context, Rig rig, Optional<OutputsState> before, StringBuilder refused) {
        Expanders expanders = new Expanders();
        for (int i = 0; i < rig.wires().expanders().size(); i++) {
            Expander expander = rig.wires().expanders().get(i);
            int place = i;
            try {
                expanders.all.add(ExpanderLines.claim(context, rig, expander, before.map(state -> state.latches().get(place))));
            } catch (BusFailure e) {
                refused.append("expander ").append(expander.name()).append(": ").append(e.getMessage()).append("; ");
            }
        }
        return expanders;
    }

    /** The expander on which a line is; empty for the header's own. */
    Optional<ExpanderLines> of(int line) {
        return all.stream().filter(e -> e.expander().has(line)).findFirst();
    }

    List<Integer> latches() {
        return all.stream().map(ExpanderLines::latch).toList();
    }

    /** Reads the pins of all; false when outputs of one fell. */
    boolean refresh() {
        boolean stood = true;
        for (ExpanderLines lines : all) {
            stood &= lines.refresh();
        }
        return stood;
    }
}
