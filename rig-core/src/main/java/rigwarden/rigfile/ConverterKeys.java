package rigwarden.rigfile;

import java.util.List;
import rigwarden.rig.Converter;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.SpiPlace;

/** Reads which chip is behind a tap or a probe, and where it hangs. */
final class ConverterKeys {
    private static final String OWN = "each has its own reach, speed and bus";
    private static final String REJECTS = "its filter rejects one of the two";
    private static final String MCP9601 = "mcp9601";

    private ConverterKeys() {}

    /** The chip of an ADC; an ADS1115 where nothing is said. */
    static Converter converter(Keys keys) {
        boolean spi = keys.has("chip") && keys.word("chip", List.of("ads1115", "ads1220"), OWN).equals("ads1220");
        if (!spi) {
            return new Converter.Ads1115(TapKeys.bus(keys), TapKeys.address(keys));
        }
        SpiPlace at = WireKeys.place(keys);
        int ready = RigKeys.line(keys, "ready_line");
        boolean external = keys.word("reference", List.of("internal", "external"), "every voltage is measured against it")
                .equals("external");
        return new Converter.Ads1220(at, ready, external,
                external ? keys.number("reference_v", "V", 1, 5.5, "it is the converter's full scale") : Converter.Ads1220.INTERNAL_VOLTS,
                external ? keys.number("reference_percent", "%", 0, 1, "it is part of the tap's uncertainty") / 100
                        : Converter.Ads1220.INTERNAL_RELATIVE);
    }

    /** The chip of a probe; an MCP9601 where nothing is said. */
    static ProbeChip probeChip(Keys keys) {
        String chip = keys.has("chip") ? keys.word("chip", List.of(MCP9601, "max31856", "max31855"), OWN) : MCP9601;
        if (chip.equals(MCP9601)) {
            return new ProbeChip.Mcp9601(TapKeys.bus(keys), TapKeys.address(keys));
        }
        SpiPlace at = WireKeys.place(keys);
        return chip.equals("max31856")
                ? new ProbeChip.Max31856(at, mains(keys))
                : new ProbeChip.Max31855(at, keys.word("couple", List.of("T", "K"), "the chip takes each for another straight line").charAt(0));
    }

    private static int mains(Keys keys) {
        int hertz = keys.whole("mains_hz", "Hz", 50, 60, REJECTS);
        if (hertz > 50 && hertz < 60) {
            keys.refuse(RefusalKind.OUT_OF_RANGE, "mains_hz", "50 or 60 Hz", REJECTS, "Which mains is your workshop on?");
        }
        return hertz;
    }
}
