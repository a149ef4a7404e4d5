package rigwarden.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rigwarden.pack.World;
import rigwarden.run.Event;

/** What the model itself says of each step and cell: written beside a rehearsal's findings, never used by them. */
final class Truth {
    private final List<Map<String, Object>> steps = new ArrayList<>();
    private double coulombs;
    private double joules;

    void saw(List<Event> events, World world) {
        for (Event event : events) {
            if (event instanceof Event.StepEnded ended) {
                Map<String, Object> step = new LinkedHashMap<>();
                step.put("index", ended.step());
                step.put("charge_ah", (world.coulombs() - coulombs) / 3600);
                step.put("energy_wh", (world.joules() - joules) / 3600);
                steps.add(step);
            } else if (event instanceof Event.StepBegun) {
                coulombs = world.coulombs();
                joules = world.joules();
            }
        }
    }

    /** Steps and cells, ready to be written. */
    Map<String, Object> written(World world, int cells) {
        List<Map<String, Object>> all = new ArrayList<>();
        for (int cell = 0; cell < cells; cell++) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("cell", cell + 1);
            one.put("capacity_ah", world.capacityAmpHours(cell));
            one.put("ohm", world.ohms10s(cell));
            all.add(one);
        }
        Map<String, Object> whole = new LinkedHashMap<>();
        whole.put("steps", steps);
        whole.put("cells", all);
        return whole;
    }
}
