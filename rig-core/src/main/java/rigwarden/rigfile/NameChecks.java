package rigwarden.rigfile;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import rigwarden.rig.Device;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/** Whether names can be columns, say what they are, and take no column that is there already. */
final class NameChecks {
    private static final Pattern COLUMN = Pattern.compile("[a-z][a-z0-9_]*");
    private static final String COLUMNS = "names become columns, and a column ends with its unit";

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;

    NameChecks(Page page, Sketch sketch) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
    }

    void check() {
        for (VoltageInput input : rig.inputs()) {
            column(input.name(), sketch.key(input, "name"), "_v");
        }
        for (Probe probe : rig.probes()) {
            column(probe.name(), sketch.key(probe, "name"), "_c");
        }
        for (Device device : rig.devices()) {
            column(device.name(), sketch.key(device, "name"), "");
        }
        Map<String, Integer> times = new HashMap<>();
        sketch.channels().forEach(c -> times.merge(c.name(), 1, Integer::sum));
        times.forEach((name, count) -> {
            if (count > 1) {
                page.refuse(RefusalKind.NAME_RESERVED, sketch.keys().getOrDefault(name, owner(name)) + ".name", name,
                        "a name that no other column has", "Rigwarden itself has a column of that name", "Rename it.");
            }
        });
    }

    /** A device whose columns meet others is found by the beginning of the name. */
    private String owner(String column) {
        return rig.devices().stream().filter(d -> column.startsWith(d.name() + "_"))
                .findFirst().map(d -> sketch.keys().get(d.name())).orElse("");
    }

    private void column(String name, String key, String unit) {
        if (!COLUMN.matcher(name).matches()) {
            page.refuse(RefusalKind.NAME_NO_COLUMN, key, name, "small letters, digits and underscores, a letter first",
                    COLUMNS, "Rename it.");
        } else if (!name.endsWith(unit)) {
            page.refuse(RefusalKind.NAME_WITHOUT_UNIT, key, name, "a name that ends with " + unit, COLUMNS,
                    "Did you mean " + name + unit + "?");
        }
    }
}
