package rigwarden.kernel;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import rigwarden.bench.Agents;
import rigwarden.bench.OwnReadings;
import rigwarden.panel.Output;
import rigwarden.rig.BusSide;
import rigwarden.rig.Cells;
import rigwarden.rig.Guards;
import rigwarden.rig.Panel;
import rigwarden.rig.Rehearsed;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntMonitor;

/** A rig on the eight lines that the emulated board has; line 3 is its power key, which the monitor can press. */
final class ContractRig {
    static final int LOOP = 3;
    static final int SHUNT = 0x40;
    static final int FREE = 5;
    static final Map<Output, Integer> LINES =
            Map.of(Output.CONTACTOR, 0, Output.PRECHARGE, 1, Output.HEARTBEAT, 2, Output.SOUNDER, 4);
    static final Rig RIG = new Rig("contract", 100_000_000L, new Cells(1, 1, 100, 3.65, 2.5, 0.5, 1), List.of(),
            Map.of(Header.BUS, 400_000), new ShuntMonitor(Header.BUS, SHUNT, 0.0005, 0.001, 5e-5, 1e-6, 327.68),
            List.of(), List.of(), new Panel(0, 1, 2, 4, LOOP, FREE, 6, 7, OptionalInt.of(0)), List.of(),
            new BusSide(10, 0.001, 1000, 1, 0.003), new Guards(0.6, 1, List.of("stop"), true, 3.75, 2.3, 0.1), Optional.empty(),
            List.of(), new Rehearsed(22, 0, 0, 0));
    static final Agents NO_AGENTS = new Agents(List.of(), false);
    static final OwnReadings OWN = new OwnReadings(() -> 0, () -> 1_000_000_000L, () -> 0);

    private ContractRig() {}
}
