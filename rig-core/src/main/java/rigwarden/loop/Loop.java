package rigwarden.loop;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import rigwarden.run.Event;
import rigwarden.run.Next;
import rigwarden.run.PickUp;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.warden.Granted;
import rigwarden.warden.Guard;
import rigwarden.warden.Inbox;
import rigwarden.warden.Judged;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;
import rigwarden.warden.Warden;

/** The one way through: scan, judge, wish, grant, orders, beat, record. */
public final class Loop {
    private final Bench bench;
    private final Warden warden;
    private final RunMachine machine;
    private final Recorder recorder;
    private final Supplier<Inbox> inbox;
    private Standing standing;
    private boolean dead;

    /** What the loop stands on between two cycles; with the bench's own state it is all that a copy needs. */
    public record Standing(Guard guard, RunState state, Orders inForce) {}

    public Loop(Bench bench, Warden warden, RunMachine machine, Recorder recorder, Supplier<Inbox> inbox,
            Standing standing) {
        this.bench = bench;
        this.warden = warden;
        this.machine = machine;
        this.recorder = recorder;
        this.inbox = inbox;
        this.standing = standing;
    }

    /** Where a run stands before its first scan, one that begins anew or one that goes on. */
    public static Standing fresh(Warden warden, long nanos, Optional<PickUp> from) {
        return new Standing(warden.fresh(nanos, PickUp.swing(from)), RunState.IDLE, Orders.OFF);
    }

    /**
     * One cycle. Whatever is thrown inside, everything is ordered off at once, and this loop never energises again: each
     * further cycle orders Off and throws.
     *
     * @return what happened
     */
    public List<Event> cycle() {
        if (dead) {
            bench.apply(Orders.OFF_NOW);
            throw new IllegalStateException("this loop has ended by an exception");
        }
        try {
            return turn();
        } catch (RuntimeException | Error thrown) {
            dead = true;
            standing = new Standing(standing.guard(), standing.state(), Orders.OFF_NOW);
            try {
                bench.apply(Orders.OFF_NOW);
            } catch (RuntimeException | Error again) {
                thrown.addSuppressed(again);
            }
            throw thrown;
        }
    }

    private List<Event> turn() {
        Scan scan = bench.take();
        Inbox in = inbox.get();
        Judged judged = warden.judge(standing.guard(), scan, standing.inForce(), in);
        Next next = machine.next(standing.state(), judged.verdict(), scan, in);
        Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, next.wish());
        Orders orders = granted.orders();
        boolean out = bench.apply(orders);
        if (out && orders instanceof Orders.Energised on && on.beats()) {
            bench.beat(on.lease());
        }
        recorder.offer(scan, in, orders, next.events());
        standing = new Standing(granted.guard(), next.state(), orders);
        return next.events();
    }

    public Standing standing() {
        return standing;
    }
}
