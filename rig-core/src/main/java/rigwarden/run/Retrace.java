package rigwarden.run;

import java.util.Optional;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.warden.Granted;
import rigwarden.warden.Guard;
import rigwarden.warden.Inbox;
import rigwarden.warden.Judged;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;
import rigwarden.warden.Swing;
import rigwarden.warden.Warden;

/** A stored run put through the core once more, scan by scan: it gives the same orders, and then knows where the run was. */
public final class Retrace {
    private final int run;
    private final Program program;
    private final Swing before;
    private final Warden warden;
    private final RunMachine machine;
    private final RestBrackets trail;
    private Optional<Guard> guard = Optional.empty();
    private RunState state = RunState.IDLE;
    private Orders orders = Orders.OFF;
    private RunState reached = RunState.IDLE;
    private long reachedNanos;
    private double reachedAmps;
    private boolean cleared;
    private boolean tripStands;

    /** A run before its first scan; one that itself went on from somewhere does so again. */
    public Retrace(int run, Rig rig, Program program, Optional<PickUp> from) {
        this.run = run;
        this.program = program;
        before = PickUp.swing(from);
        warden = new Warden(rig);
        machine = new RunMachine(rig, program, from);
        trail = new RestBrackets(rig);
    }

    /** One cycle; the orders granted in it. */
    public Orders cycle(Scan scan, Inbox inbox) {
        Judged judged = warden.judge(guard.orElseGet(() -> warden.fresh(scan.nanos(), before)), scan, orders, inbox);
        Next next = machine.next(state, judged.verdict(), scan, inbox);
        Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, next.wish());
        guard = Optional.of(granted.guard());
        state = next.state();
        orders = granted.orders();
        next.events().forEach(this::saw);
        trail.take(scan);
        if (!(state instanceof RunState.Interrupted || state instanceof RunState.Idle)) {
            reached = state;
            reachedNanos = scan.nanos();
            reachedAmps = orders instanceof Orders.Energised on ? on.set().amps() : 0;
        }
        return orders;
    }

    private void saw(Event event) {
        if (event instanceof Event.Cleared) {
            cleared = true;
            tripStands = false;
        } else if (event instanceof Event.Tripped) {
            cleared = false;
            tripStands = true;
        }
    }

    /** Whether the last trip was not cleared. */
    public boolean tripStands() {
        return tripStands;
    }

    /** Whether the last trip was cleared. */
    public boolean cleared() {
        return cleared;
    }

    /** Where the run was in its last scan with a step, if it was in one. */
    public Optional<PickUp> place() {
        return PickUp.of(run, reached, reachedNanos, reachedAmps, trail.brackets(),
                guard.map(g -> g.memory().swing()).orElse(before));
    }

    /** The step that was broken off. */
    public Optional<Step> step() {
        return place().map(place -> program.steps().get(place.step() - 1));
    }

    /** Whether a step that is still to come recovers low cells. */
    public boolean recovers() {
        return place().stream().anyMatch(place -> program.steps().stream().skip(place.step())
                .anyMatch(Step.Recover.class::isInstance));
    }
}
