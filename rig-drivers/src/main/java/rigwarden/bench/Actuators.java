package rigwarden.bench;

import java.util.EnumSet;
import java.util.Set;
import rigwarden.panel.Output;
import rigwarden.panel.Outputs;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.Order;
import rigwarden.warden.Orders;
import rigwarden.warden.Way;

/** Orders to levels and instrument orders. Off parts go out first, each whatever became of the others. */
final class Actuators {
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
                case PRECHARGE -> idle(EnumSet.of(Output.PRECHARGE));
                case CONTACT, SILENCE -> idle(contact());
                case CURRENT -> flow(energised, untilNanos);
            };
        };
    }

    private boolean off(Orders.Urgency urgency) {
        Set<Output> wanted = switch (urgency) {
            case CALM -> EnumSet.noneOf(Output.class);
            case NOW -> EnumSet.of(Output.SOUNDER);
        };
        boolean low = lower(wanted);
        boolean off = allOff();
        boolean sounding = raise(wanted);
        return low && off && sounding;
    }

    /** Lines without an instrument; nothing is raised when something would not go low. */
    private boolean idle(Set<Output> wanted) {
        boolean low = lower(wanted);
        boolean off = allOff();
        return low && off && raise(wanted);
    }

    private boolean flow(Orders.Energised energised, long untilNanos) {
        Set<Output> wanted = contact();
        boolean charge = energised.way() == Way.CHARGE;
        wanted.add(charge ? Output.SOURCE_RELAY : Output.SINK_RELAY);
        InstrumentAgent working = charge ? agents.source() : agents.sink();
        InstrumentAgent resting = charge ? agents.sink() : agents.source();
        boolean low = lower(wanted);
        resting.order(Order.OFF);
        if (!low) {
            working.order(Order.OFF);
            return false;
        }
        return raise(wanted) && working.order(new Order.On(energised.set()), untilNanos);
    }

    /** The pre-charge relay is held for one scan beyond the contactor's order, until the contact has closed. */
    private Set<Output> contact() {
        boolean closing = outputs.isHigh(Output.PRECHARGE) && !outputs.isHigh(Output.CONTACTOR);
        return closing ? EnumSet.of(Output.CONTACTOR, Output.PRECHARGE) : EnumSet.of(Output.CONTACTOR);
    }

    private boolean allOff() {
        boolean source = agents.source().order(Order.OFF);
        return agents.sink().order(Order.OFF) && source;
    }

    private boolean lower(Set<Output> wanted) {
        boolean out = true;
        for (Output output : Output.values()) {
            if (output != Output.HEARTBEAT && !wanted.contains(output)) {
                out &= outputs.set(output, false);
            }
        }
        return out;
    }

    private boolean raise(Set<Output> wanted) {
        boolean out = true;
        for (Output output : wanted) {
            out &= outputs.set(output, true);
        }
        return out;
    }
}
