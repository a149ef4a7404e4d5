package rigwarden.command;

import java.util.List;
import rigwarden.live.Desk;
import rigwarden.loop.Recorder;
import rigwarden.run.Event;
import rigwarden.run.RunMachine;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** Asks once for the start of a proof's energised part. Control thread. */
final class Starting implements Recorder {
    /** The start is asked for when every channel has been judged for a while. */
    private static final int SETTLED_SCANS = 30;

    private final Recorder next;
    private final Inputs inputs;
    private final Desk desk;
    private int scans;

    Starting(Recorder next, Inputs inputs, Desk desk) {
        this.next = next;
        this.inputs = inputs;
        this.desk = desk;
    }

    @Override
    public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
        next.offer(scan, inbox, orders, events);
        scans++;
        if (scans == SETTLED_SCANS) {
            desk.ask(RunMachine.start(inputs.program()));
        }
    }
}
