package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import rigwarden.rig.Expander;
import rigwarden.rig.SpiPlace;
import rigwarden.rig.Wires;

/** Reads the buses, the expanders, and where a chip hangs on an SPI bus. */
final class WireKeys {
    private final RigKeys rig;
    private Map<Integer, Integer> i2c = Map.of();
    private Map<Integer, Integer> spi = Map.of();
    private final List<Expander> expanders = new ArrayList<>();

    WireKeys(RigKeys rig) {
        this.rig = rig;
    }

    void read(Keys root) {
        i2c = buses(root, "bus", 10_000, 1_000_000);
        if (root.has("spi_bus")) {
            spi = buses(root, "spi_bus", 100_000, 10_000_000);
        }
        if (root.has("expander")) {
            for (Keys keys : root.tables("expander", RefusalKind.MISSING_KEY, "its pins are lines of the panel")) {
                expanders.add(new Expander(rig.name(keys), TapKeys.bus(keys), TapKeys.address(keys),
                        keys.whole("first_line", "", 100, 496, "lines of the header come before it")));
                keys.noOthers();
            }
        }
    }

    private Map<Integer, Integer> buses(Keys root, String table, int slowest, int fastest) {
        Map<Integer, Integer> hertz = new LinkedHashMap<>();
        for (Keys keys : root.tables(table, RefusalKind.MISSING_KEY, "chips sit on buses")) {
            int number = keys.whole("number", "", 0, 99, "it is the controller's number of the bus");
            int clock = keys.whole("hertz", "Hz", slowest, fastest, "the wire time of a scan is computed from it");
            if (hertz.putIfAbsent(number, clock) != null) {
                rig.page().refuse(RefusalKind.SAME_NAME, keys.full("number"), "each bus once", "a bus has one clock",
                        "Remove one of the two.");
            }
            keys.noOthers();
        }
        return Map.copyOf(hertz);
    }

    Wires wires() {
        return new Wires(i2c, spi, expanders);
    }

    /** Where an SPI chip hangs. */
    static SpiPlace place(Keys keys) {
        return new SpiPlace(
                keys.whole("spi_bus", "", 0, 99, "the chip is reached over it"),
                keys.whole("select", "", 0, 2, "it names the device node; a header has two or three"),
                keys.has("select_line")
                        ? OptionalInt.of(RigKeys.line(keys, "select_line"))
                        : OptionalInt.empty());
    }
}
