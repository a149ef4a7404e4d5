package rigwarden.bench;

import java.util.Optional;
import rigwarden.panel.Output;
import rigwarden.panel.Outputs;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.Order;
import rigwarden.warden.Orders;

/** Orders to levels and instrument orders. Off parts go out first, each whatever became of the others. */
final class Actuators {
    private static final int NONE = -1;

    private final Outputs outputs;
    private final Agents agents;

    Actuators(Outputs outputs, Agents agents) {
        this.outputs = outputs;
        this.agents = agents;
    }

    boolean apply(Orders orders, long untilNanos) {
        return switch (orders) {
            case Orders.Off off -> off(off.urgency());
            case Orders.Energised energised -> switch (energised.stage()) {
                case NO_LOAD -> idle(Output.relay(energised.through()).bit());
                case PRECHARGE -> idle(Output.PRECHARGE.bit());
                case CONTACT -> idle(contact());
                case SILENCE -> idle(contact()) && outputs.restHeartbeat();
                case CURRENT -> flow(energised, untilNanos, contact() | relay(energised));
                case RELAY_ALONE -> flow(energised, untilNanos, contact());
                case CONTACTOR_ALONE -> flow(energised, untilNanos, relay(energised));
            };
        };
    }

    private boolean off(Orders.Urgency urgency) {
        long wanted = switch (urgency) {
            case CALM -> 0;
            case NOW -> Output.SOUNDER.bit();
        };
        boolean low = lower(wanted);
        boolean off = agents.off(NONE);
        boolean sounding = raise(wanted);
        return low && off && sounding;
    }

    /** Lines without an instrument; nothing is raised when something would not go low. */
    private boolean idle(long wanted) {
        boolean low = lower(wanted);
        boolean off = agents.off(NONE);
        return low && off && raise(wanted);
    }

    /** A switched device's relay is all that it has: it is closed while any current is wanted. */
    private long relay(Orders.Energised energised) {
        boolean closed = agents.of(energised.through()).isPresent() || energised.set().amps() > 0;
        return closed ? Output.relay(energised.through()).bit() : 0;
    }

    private boolean flow(Orders.Energised energised, long untilNanos, long wanted) {
        int through = energised.through();
        Optional<InstrumentAgent> working = agents.of(through);
        boolean low = lower(wanted);
        agents.off(through);
        if (!low) {
            working.ifPresent(agent -> agent.order(Order.OFF));
            return false;
        }
        boolean raised = raise(wanted);
        return working.isEmpty() ? raised : raised && working.get().order(new Order.On(energised.set()), untilNanos);
    }

    /** The pre-charge relay is held for one scan beyond the contactor's order, until the contact has closed. */
    private long contact() {
        boolean closing = outputs.isHigh(Output.PRECHARGE) && !outputs.isHigh(Output.CONTACTOR);
        return Output.CONTACTOR.bit() | (closing ? Output.PRECHARGE.bit() : 0);
    }

    private boolean lower(long wanted) {
        boolean out = true;
        for (Output output : outputs.all()) {
            if (output != Output.HEARTBEAT && (wanted & output.bit()) == 0) {
                out &= outputs.set(output, false);
            }
        }
        return out;
    }

    private boolean raise(long wanted) {
        boolean out = true;
        for (Output output : outputs.all()) {
            if ((wanted & output.bit()) != 0) {
                out &= outputs.set(output, true);
            }
        }
        return out;
    }
}
