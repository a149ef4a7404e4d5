package rigwarden.emulated;

import java.util.ArrayList;
import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Converter;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntChip;
import rigwarden.warden.Failure;

/** Which rigs can be rehearsed: those all of whose chips are emulated. */
final class Emulable {
    private Emulable() {}

    /**
     * Refuses a rig with a chip that nobody emulates.
     *
     * @throws BusFailure naming all of them
     */
    static void check(Rig rig) throws BusFailure {
        List<String> missing = new ArrayList<>();
        if (rig.shunt().chip() != ShuntChip.INA228) {
            missing.add(rig.shunt().chip().name());
        }
        rig.inputs().stream().filter(i -> !(i.converter() instanceof Converter.Ads1115))
                .forEach(i -> missing.add(i.converter().chip()));
        rig.probes().stream().filter(p -> !(p.chip() instanceof ProbeChip.Mcp9601))
                .forEach(p -> missing.add(p.chip().chip()));
        rig.wires().expanders().forEach(_ -> missing.add("MCP23017"));
        if (!missing.isEmpty()) {
            throw new BusFailure(Failure.NO_ANSWER, "a rehearsal has no emulated "
                    + String.join(", ", missing.stream().distinct().toList())
                    + " yet. Its file can be checked, and its limits printed.");
        }
    }
}
