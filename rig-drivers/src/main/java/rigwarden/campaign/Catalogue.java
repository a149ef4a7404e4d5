package rigwarden.campaign;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Rig;

/** Every kind of fault that a rig can have, from both outside lists, and the mangler. */
final class Catalogue {
    private Catalogue() {}

    static List<FaultKind> of(Rig rig) {
        List<FaultKind> kinds = new ArrayList<>(ComponentFaults.of(rig));
        kinds.addAll(CommunicationFaults.of(rig));
        return List.copyOf(kinds);
    }
}
