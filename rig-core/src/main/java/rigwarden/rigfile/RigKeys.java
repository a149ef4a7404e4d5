package rigwarden.rigfile;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import rigwarden.rig.Cells;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Panel;
import rigwarden.rig.Rehearsed;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntChip;
import rigwarden.rig.ShuntMonitor;

/** Reads every key of a rig file; ranges here are those of one value by itself. */
final class RigKeys {
    static final long MILLI = 1_000_000L;
    private static final String WIRED = "everything wired must be described";
    private static final int MOST_SERIES = 16;
    private static final int MOST_PARALLEL = 16;
    private static final int SHORTEST_SCAN_MS = 50;
    private static final int LONGEST_SCAN_MS = 200;
    /** A seller may rate to a lower cut-off than any programme may go to: then nothing is decided. */
    private static final double LOWEST_RATED_V = 2.0;
    private static final double HIGHEST_RATED_V = 3.4;

    private final Page page;
    private final Map<String, String> places = new HashMap<>();
    private final Set<String> names = new HashSet<>();

    RigKeys(Page page) {
        this.page = page;
    }

    Sketch sketch(Keys root) {
        String name = root.text("name", "runs and reports name their rig");
        int scanMillis = root.whole("scan_ms", "ms", SHORTEST_SCAN_MS, LONGEST_SCAN_MS,
                "faster than the chips convert, slower than rules react");
        Keys cell = inner(root, "cell");
        Cells described = labelled(cell, cells(cell));
        double ohms = cell.number("ohms", "ohm", 0.00005, 0.1, "it sets the current of a short circuit");
        cell.noOthers();
        Cells cells = root.has("rating")
                ? root.table("rating", RatingKeys.WHY).map(keys -> RatingKeys.read(keys, described, LOWEST_RATED_V, HIGHEST_RATED_V)).orElse(described)
                : described;
        WireKeys wires = new WireKeys(this);
        wires.read(root);
        ShuntMonitor shunt = shunt(inner(root, "shunt"));
        TapKeys taps = page.sound()
                ? new TapKeys(this, cells.series(), scanMillis, 2 * scanMillis)
                : new TapKeys(this, MOST_SERIES, SHORTEST_SCAN_MS, 2 * LONGEST_SCAN_MS);
        taps.converters(root);
        PathKeys path = new PathKeys(this);
        path.parts(root);
        Panel panel = panel(inner(root, "panel"));
        List<Device> devices = new DeviceKeys(this, cells).devices(root);
        Rig rig = new Rig(name, scanMillis * MILLI, cells, path.parts(), wires.wires(), shunt, taps.inputs(), taps.probes(root),
                panel, devices, path.busSide(inner(root, "bus_side")), path.guards(inner(root, "guards")),
                path.protection(root), List.of(), rehearsed(inner(root, "rehearsal")));
        root.noOthers();
        return new Sketch(rig, ohms, taps.converters(), Map.copyOf(places), path.oneWayBreakers(),
                path.prechargeJoules(), path.bleedWatts());
    }

    /** A table that must be there; an empty one stands in for it after the refusal. */
    Keys inner(Keys root, String key) {
        return root.table(key, WIRED).orElseGet(root::none);
    }

    /** Reads the name of a thing, which no other thing may have, and remembers where it stands. */
    String name(Keys keys) {
        String name = keys.text("name", "every thing needs a name of its own");
        if (!name.isEmpty() && !names.add(name)) {
            page.refuse(RefusalKind.SAME_NAME, keys.full("name"), "a name of its own",
                    "channels and parts are found by name", "Rename one of the two.");
        }
        places.putIfAbsent(name, keys.full("name").substring(0, keys.full("name").length() - ".name".length()));
        return name;
    }

    private static Rehearsed rehearsed(Keys keys) {
        Rehearsed rehearsed = new Rehearsed(
                keys.number("room_c", "°C", 0, 40, "a rehearsal needs a room"),
                keys.number("room_drift_k_per_h", "K/h", -5, 5, "a night in a hut is not a climate chamber"),
                keys.number("charge_spread_percent", "%", 0, 20, "cells never arrive alike") / 100,
                keys.number("capacity_spread_percent", "%", 0, 10, "cells are never alike") / 100);
        keys.noOthers();
        return rehearsed;
    }

    /** Who lies where: exchanged cells change the file, and with it what was proved. */
    private Cells labelled(Keys keys, Cells cells) {
        if (!keys.has("labels")) {
            return cells;
        }
        List<String> labels = keys.texts("labels", "a rig is proved with the cells that are in it");
        int most = cells.series() * cells.parallel();
        boolean each = labels.size() == most && new HashSet<>(labels).size() == most;
        if (!each && page.sound()) {
            page.refuse(RefusalKind.CELL_LABELS, keys.full("labels"), most + " different labels, one for each cell from B− to B+",
                    "a rig is proved with the cells that are in it", "Name every cell once.");
        }
        return cells.labelled(labels);
    }

    private static Cells cells(Keys keys) {
        int series = keys.whole("series", "cells", 1, MOST_SERIES, "taps and limits are counted in cells");
        int parallel = keys.has("parallel")
                ? keys.whole("parallel", "cells", 1, MOST_PARALLEL, "they share one tap and one place")
                : 1;
        return new Cells(series, parallel,
                parallel * keys.number("rated_ah", "Ah", 1, 2000, "rates are multiples of it"),
                keys.number("ceiling_v", "V", 3.0, Envelope.CEILING_V, "above it an LFP cell's electrolyte suffers"),
                keys.number("cut_off_v", "V", Envelope.CUT_OFF_V, 3.0, "below it an LFP cell may be harmed"),
                keys.number("charge_c", "1/h", 0.01, 2, "the cell maker's sheet governs where it is tighter"),
                keys.number("discharge_c", "1/h", 0.01, 10, "the cell maker's sheet governs where it is tighter"));
    }

    private static ShuntMonitor shunt(Keys keys) {
        ShuntChip chip = keys.has("chip") && keys.word("chip", List.of("ina228", "ina226"), "each has its own reach").equals("ina226")
                ? ShuntChip.INA226
                : ShuntChip.INA228;
        ShuntMonitor shunt = new ShuntMonitor(
                chip,
                TapKeys.bus(keys),
                TapKeys.address(keys),
                keys.number("ohms", "ohm", 1e-6, 0.1, "the current is computed from it"),
                keys.number("tolerance_percent", "%", 0, 5, "it is part of every capacity's uncertainty") / 100,
                keys.number("ppm_per_kelvin", "ppm/K", 0, 500, "the shunt warms with the current") * 1e-6,
                keys.number("thermo_uv", "µV", 0, 100, "it looks like current") * 1e-6,
                keys.number("full_scale_a", "A", 1, 3000, "currents beyond it cannot be seen"));
        keys.noOthers();
        return shunt;
    }

    private static Panel panel(Keys keys) {
        Panel panel = new Panel(line(keys, "contactor"),
                keys.whole("precharge", RefusalKind.NO_PRECHARGE, "", 0, 511,
                        "closing onto empty capacitors welds the contact"),
                line(keys, "heartbeat"), line(keys, "sounder"), line(keys, "loop"), line(keys, "coil_feed"), line(keys, "feedback"), line(keys, "arm"),
                keys.has("controller")
                        ? OptionalInt.of(keys.whole("controller", "", 0, 99, "it is the number of the lines' controller, gpiochipN"))
                        : OptionalInt.empty());
        keys.noOthers();
        return panel;
    }

    static int line(Keys keys, String key) {
        return keys.whole(key, "", 0, 511, "it is the controller's number of the line");
    }

    Page page() {
        return page;
    }
}
