package rigwarden.emulated;

import java.util.OptionalInt;
import rigwarden.pack.Node;
import rigwarden.rig.Rig;
import rigwarden.rig.Spot;

/** The probe that an emulated person carries about. */
final class LooseProbe {
    private LooseProbe() {}

    /** Its place among the rig's probes; empty where there is none. */
    static OptionalInt of(Rig rig) {
        for (int i = 0; i < rig.probes().size(); i++) {
            if (rig.probes().get(i).place().carried()) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }

    /** What a spot is in the world; what the model gives no warmth of its own is as warm as the room. */
    static Node node(Spot spot) {
        return switch (spot.part()) {
            case BODY -> Node.body(spot.cell() - 1);
            case STUD_POSITIVE -> Node.stud(spot.cell() - 1, true);
            case STUD_NEGATIVE -> Node.stud(spot.cell() - 1, false);
            case BAR -> Node.link(spot.cell());
            case SHUNT -> Node.SHUNT;
            case CONTACTOR -> Node.CONTACTOR;
            case OTHER, AWAY -> Node.ROOM;
        };
    }
}
