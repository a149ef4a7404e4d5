package rigwarden.rigfile;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import rigwarden.rig.Expander;
import rigwarden.rig.Panel;
import rigwarden.rig.Rig;

/** Whether each line has one use, and can be what it is used for. */
final class LineChecks {
    private static final String WHERE = "Name the line where the wire ends.";

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;
    private final Map<String, Integer> spi;

    /**
     * Nothing checked yet.
     *
     * @param spi lines that SPI chips need, by key
     */
    LineChecks(Page page, Sketch sketch, Map<String, Integer> spi) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
        this.spi = spi;
    }

    void check() {
        Panel panel = rig.panel();
        Map<String, Integer> inputs = new LinkedHashMap<>();
        inputs.put("panel.loop", panel.loop());
        inputs.put("panel.coil_feed", panel.coilFeed());
        inputs.put("panel.feedback", panel.feedback());
        inputs.put("panel.arm", panel.arm());
        Map<String, Integer> uses = new LinkedHashMap<>();
        uses.put("panel.contactor", panel.contactor());
        uses.put("panel.precharge", panel.precharge());
        uses.put("panel.heartbeat", panel.heartbeat());
        uses.put("panel.sounder", panel.sounder());
        uses.putAll(inputs);
        rig.devices().forEach(device -> uses.put(sketch.key(device, "relay"), device.relay()));
        uses.putAll(spi);
        once(uses);
        expanders();
        inputs.forEach(this::input);
        spi.forEach(this::header);
    }

    private void once(Map<String, Integer> uses) {
        Map<Integer, String> first = new HashMap<>();
        uses.forEach((use, line) -> {
            String other = first.putIfAbsent(line, use);
            if (other != null) {
                page.refuse(RefusalKind.SAME_LINE, use, "a line of its own", other + " has it", WHERE);
            }
        });
    }

    private void expanders() {
        Map<Integer, String> taken = new HashMap<>();
        for (Expander expander : rig.wires().expanders()) {
            String key = sketch.keys().get(expander.name()) + ".first_line";
            for (int pin = 0; pin < Expander.PINS; pin++) {
                String other = taken.putIfAbsent(expander.firstLine() + pin, key);
                if (other != null) {
                    page.refuse(RefusalKind.SAME_LINE, key, "sixteen lines of its own", other + " has some of them",
                            "Let it begin after the other's sixteen.");
                    break;
                }
            }
        }
    }

    private void input(String key, int line) {
        rig.wires().expander(line).filter(e -> e.drivesOnly(line)).ifPresent(expander ->
                page.refuse(RefusalKind.PIN_DRIVES_ONLY, key, line + ", the last pin of a port of " + expander.name(),
                        "one of the other seven", "newer chips cannot read GPA7 and GPB7", WHERE));
    }

    private void header(String key, int line) {
        rig.wires().expander(line).ifPresent(expander ->
                page.refuse(RefusalKind.LINE_OFF_HEADER, key, line + ", a pin of " + expander.name(),
                        "a line of the header", "it must move within one transaction, and an expander takes one itself",
                        "Wire it to the header."));
    }
}
