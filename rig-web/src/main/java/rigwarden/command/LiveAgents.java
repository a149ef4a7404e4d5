package rigwarden.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ObjLongConsumer;
import rigwarden.bench.Agents;
import rigwarden.loop.Clock;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.serial.AgentState;
import rigwarden.serial.AgentThread;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.JSerialLine;

/** The agents of a real rig's instruments, each on a thread of its own. */
final class LiveAgents implements AutoCloseable {
    private final Agents agents;
    private final List<AgentThread> threads = new ArrayList<>();

    private LiveAgents(Agents agents) {
        this.agents = agents;
    }

    /**
     * Starts them.
     *
     * @param told takes what an instrument complains of, and when, on its agent's thread; must not wait
     */
    static LiveAgents start(Rig rig, Clock clock, ObjLongConsumer<String> told) {
        List<Optional<InstrumentAgent>> made = new ArrayList<>();
        for (Device device : rig.devices()) {
            made.add(switch (device) {
                case Device.Programmed p -> Optional.of(InstrumentAgent.of(rig, p,
                        JSerialLine.of(p.instrument()), AgentState.at(clock.nanos())));
                case Device.PlainCharger _, Device.Inverter _ -> Optional.empty();
            });
        }
        LiveAgents live = new LiveAgents(new Agents(made, false));
        for (int i = 0; i < made.size(); i++) {
            String name = rig.devices().get(i).name();
            made.get(i).ifPresent(agent -> live.threads.add(AgentThread.start(agent, clock, name,
                    said -> told.accept(name + ": " + said.words(), said.nanos()))));
        }
        return live;
    }

    Agents agents() {
        return agents;
    }

    /** Orders each off and ends its thread. */
    @Override
    public void close() {
        threads.forEach(AgentThread::close);
    }
}
