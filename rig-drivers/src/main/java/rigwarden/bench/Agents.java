package rigwarden.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.Order;

/**
 * The agents of the devices that take orders, by place in the rig's list; a switched device has none.
 *
 * @param agents by device
 * @param stepped true in a rehearsal, where each scan steps them; false when threads do
 */
public record Agents(List<Optional<InstrumentAgent>> agents, boolean stepped) {
    public Agents {
        agents = List.copyOf(agents);
    }

    void step(long nanos) {
        if (stepped) {
            agents.forEach(agent -> agent.ifPresent(present -> present.step(nanos)));
        }
    }

    Optional<InstrumentAgent> of(int through) {
        return agents.get(through);
    }

    /** Orders every device off but one, each whatever became of the others; −1 spares none. */
    boolean off(int but) {
        boolean out = true;
        for (int i = 0; i < agents.size(); i++) {
            if (i != but && agents.get(i).isPresent()) {
                out &= agents.get(i).get().order(Order.OFF);
            }
        }
        return out;
    }

    /** The agents that there are. */
    public List<InstrumentAgent> present() {
        List<InstrumentAgent> present = new ArrayList<>();
        agents.forEach(agent -> agent.ifPresent(present::add));
        return List.copyOf(present);
    }
}
