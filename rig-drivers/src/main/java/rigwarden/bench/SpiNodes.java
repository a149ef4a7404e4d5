package rigwarden.bench;

import com.pi4j.context.Context;
import java.util.HashMap;
import java.util.Map;
import rigwarden.bus.BusFailure;
import rigwarden.bus.SpiChip;
import rigwarden.bus.SpiNode;
import rigwarden.rig.Rig;
import rigwarden.rig.SpiPlace;

/** The SPI nodes of a rig, each opened once, whatever the count of chips behind it. */
final class SpiNodes {
    /** Mode of a MAX31855. */
    static final int MODE_0 = 0;
    /** Mode of a MAX31856 and an ADS1220. */
    static final int MODE_1 = 1;

    private final Rig rig;
    private final Context context;
    private final Map<String, SpiNode> open = new HashMap<>();

    SpiNodes(Rig rig, Context context) {
        this.rig = rig;
        this.context = context;
    }

    SpiChip chip(SpiPlace at, int mode) throws BusFailure {
        SpiNode node = open.get(at.node());
        if (node == null) {
            node = SpiNode.at(context, at.bus(), at.select(), mode, rig.wires().spiHertz().get(at.bus()));
            open.put(at.node(), node);
        }
        return at.line().isPresent() ? node.chip(context, at.line().getAsInt()) : node.chip();
    }
}
