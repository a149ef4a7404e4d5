package rigwarden.bench;

import com.pi4j.context.Context;
import java.util.List;
import rigwarden.panel.Output;
import rigwarden.rig.Panel;
import rigwarden.serial.InstrumentAgent;
import rigwarden.warden.Closing;
import rigwarden.warden.Orders;
import rigwarden.warden.Way;

/** Carries out orders: the Off parts first, the contactor before all, each tried whatever became of the others. */
final class Outputs {
    private final Output contactor;
    private final Output precharge;
    private final Output sourceRelay;
    private final Output sinkRelay;
    private final Output heartbeat;
    private final Output sounder;
    private final InstrumentAgent source;
    private final InstrumentAgent sink;

    Outputs(Context context, Panel panel, InstrumentAgent source, InstrumentAgent sink, List<Boolean> levels) {
        contactor = new Output(context, "contactor", panel.contactor(), levels.get(0));
        precharge = new Output(context, "precharge", panel.precharge(), levels.get(1));
        sourceRelay = new Output(context, "source_relay", panel.sourceRelay(), levels.get(2));
        sinkRelay = new Output(context, "sink_relay", panel.sinkRelay(), levels.get(3));
        heartbeat = new Output(context, "heartbeat", panel.heartbeat(), levels.get(4));
        sounder = new Output(context, "sounder", panel.sounder(), levels.get(5));
        this.source = source;
        this.sink = sink;
    }

    boolean apply(Orders orders) {
        return switch (orders) {
            case Orders.Off off -> off(off.urgency());
            case Orders.Energised on -> energised(on);
        };
    }

    private boolean off(Orders.Urgency urgency) {
        boolean out = contactor.set(false);
        out &= precharge.set(false);
        out &= sourceRelay.set(false);
        out &= sinkRelay.set(false);
        source.off();
        sink.off();
        out &= sounder.set(urgency == Orders.Urgency.NOW);
        return out;
    }

    private boolean energised(Orders.Energised on) {
        boolean carries = on.stage() == Closing.CURRENT;
        boolean charge = on.way() == Way.CHARGE;
        boolean out = true;
        if (!(carries && charge)) {
            out &= sourceRelay.set(false);
            source.off();
        }
        if (!(carries && !charge)) {
            out &= sinkRelay.set(false);
            sink.off();
        }
        out &= sounder.set(false);
        out &= precharge.set(on.stage() == Closing.PRECHARGE || on.stage() == Closing.CONTACT);
        out &= contactor.set(on.stage() != Closing.PRECHARGE);
        if (carries) {
            out &= charge ? sourceRelay.set(true) : sinkRelay.set(true);
            (charge ? source : sink).on(on.set());
        }
        return out;
    }

    /** Levels of the lines, in the order in which they are claimed. */
    List<Boolean> levels() {
        return List.of(contactor.ordered(), precharge.ordered(), sourceRelay.ordered(), sinkRelay.ordered(),
                heartbeat.ordered(), sounder.ordered());
    }

    void beat() {
        heartbeat.set(!heartbeat.ordered());
    }
}
