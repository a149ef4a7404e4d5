package rigwarden.campaign;

import java.util.LinkedHashMap;
import java.util.Map;
import rigwarden.emulated.ChipPlace;
import rigwarden.rig.Converter;
import rigwarden.rig.Rig;

/** The chips of a rig and the lines that some of them have, by the names under which cases tell of them. */
final class ChipParts {
    private ChipParts() {}

    static Map<String, ChipPlace> of(Rig rig) {
        Map<String, ChipPlace> chips = new LinkedHashMap<>();
        chips.put("shunt monitor", ChipPlace.of(rig.shunt()));
        rig.inputs().forEach(i -> chips.put(converter(i.converter()), ChipPlace.of(i.converter())));
        rig.probes().forEach(p -> chips.put("chip of " + p.name(), ChipPlace.of(p.chip())));
        rig.wires().expanders().forEach(e -> chips.put("expander " + e.name(), ChipPlace.of(e)));
        return chips;
    }

    private static String converter(Converter converter) {
        return switch (converter) {
            case Converter.Ads1115 own -> "converter on bus " + own.bus() + " at " + own.address();
            case Converter.Ads1220 own -> "converter on " + own.wire() + " with ready line " + own.readyLine();
        };
    }

    /** Lines of the header that select a chip. */
    static Map<String, Integer> selects(Rig rig) {
        Map<String, Integer> lines = new LinkedHashMap<>();
        of(rig).forEach((name, place) -> {
            if (place instanceof ChipPlace.OnSpi spi) {
                spi.at().line().ifPresent(line -> lines.put("select of " + name, line));
            }
        });
        return lines;
    }

    /** Lines by which a chip says that it is ready. */
    static Map<String, Integer> readyLines(Rig rig) {
        Map<String, Integer> lines = new LinkedHashMap<>();
        rig.inputs().forEach(input -> {
            if (input.converter() instanceof Converter.Ads1220 own) {
                lines.put("ready line " + own.readyLine(), own.readyLine());
            }
        });
        return lines;
    }
}
