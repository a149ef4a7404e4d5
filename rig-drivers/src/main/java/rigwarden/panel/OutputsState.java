package rigwarden.panel;

import java.util.List;

/**
 * What the drivers of the output lines know, for a copy of a rig.
 *
 * @param high outputs that were last written high, as bits
 * @param unsure outputs whose last write did not go out, or whose expander lost them, as bits
 * @param fallen whether an expander has lost its outputs and not all were ordered low since
 * @param resting whether the heartbeat has been put to rest and not toggled since
 * @param restsHigh on which level it was put to rest last
 * @param latches pins of each expander that were last written high, as its driver numbers them, in the rig's order
 */
public record OutputsState(long high, long unsure, boolean fallen, boolean resting, boolean restsHigh, List<Integer> latches) {
    public OutputsState {
        latches = List.copyOf(latches);
    }
}
