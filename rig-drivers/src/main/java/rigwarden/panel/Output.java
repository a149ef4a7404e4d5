package rigwarden.panel;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Rig;

/**
 * An output line of a rig.
 *
 * @param place among the outputs, in the order in which they are let go, 0…63
 * @param name for messages
 */
public record Output(int place, String name) {
    public static final Output CONTACTOR = new Output(0, "contactor");
    public static final Output PRECHARGE = new Output(1, "precharge");
    public static final Output SOUNDER = new Output(2, "sounder");
    public static final Output HEARTBEAT = new Output(3, "heartbeat");
    private static final int FIRST_RELAY = 4;

    /** Relay of a source or sink, by its place in the rig's list. */
    public static Output relay(int through) {
        return new Output(FIRST_RELAY + through, "relay " + through);
    }

    /** All outputs of a rig, the contactor first. */
    public static List<Output> of(Rig rig) {
        List<Output> all = new ArrayList<>(List.of(CONTACTOR, PRECHARGE, SOUNDER, HEARTBEAT));
        for (int i = 0; i < rig.devices().size(); i++) {
            all.add(relay(i));
        }
        return List.copyOf(all);
    }

    /** Line number of this output on the controller. */
    int line(Rig rig) {
        return switch (place) {
            case 0 -> rig.panel().contactor();
            case 1 -> rig.panel().precharge();
            case 2 -> rig.panel().sounder();
            case 3 -> rig.panel().heartbeat();
            default -> rig.devices().get(place - FIRST_RELAY).relay();
        };
    }

    /** Its bit in a set of outputs. */
    public long bit() {
        return 1L << place;
    }
}
