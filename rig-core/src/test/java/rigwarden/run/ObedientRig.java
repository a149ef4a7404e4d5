package rigwarden.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleBiFunction;
import java.util.function.UnaryOperator;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.ChipSum;
import rigwarden.warden.Closing;
import rigwarden.warden.Guard;
import rigwarden.warden.Granted;
import rigwarden.warden.Inbox;
import rigwarden.warden.Judged;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;
import rigwarden.warden.Scans;
import rigwarden.warden.Warden;

/**
 * A rig that does what it is told, with cells that are a straight line between two ends: enough to see what the machine
 * orders and what ends its steps. Real judge, next and grant run on it.
 */
final class ObedientRig {
    private static final double[] SHARES = {0, 0.02, 0.06, 0.97, 1, 1.1};
    private static final double[] VOLTS = {2.3, 3.0, 3.22, 3.38, 3.65, 4.0};
    private static final double OHMS = 0.5e-3;

    final Rig rig;
    final double[] ampHours;
    final List<Event> events = new ArrayList<>();
    private final Warden warden;
    private final RunMachine machine;
    private Guard guard;
    RunState state = RunState.IDLE;
    Orders orders = Orders.OFF;
    /** Changes what the scan shows; for faults, and for the room. */
    UnaryOperator<Scans> twist = scans -> scans;
    /** What flows under an order through a device, A; what is ordered, unless a test says otherwise. */
    ToDoubleBiFunction<ObedientRig, Orders.Energised> flows = (_, on) -> on.set().amps();
    long nanos;
    private long stageNanos;
    private long number;
    private double amps;
    private ChipSum sum = ChipSum.NOTHING;
    /** What reads the run again, scan by scan. */
    final Optional<Retrace> retrace;
    /** Whether that ever came to other orders. */
    boolean differs;

    ObedientRig(Rig rig, double share, Step... steps) {
        this(rig, new Program("obedient", false, List.of(steps)), Optional.empty(), false, filled(rig, share));
        scan(0.1, Inbox.of(RunMachine.start(new Program("obedient", false, List.of(steps)))));
    }

    /** A rig that has been looked at for ten seconds; nobody has asked for anything. */
    ObedientRig(Rig rig, Program program, Optional<PickUp> from, boolean retraced, double... ampHours) {
        this.rig = rig;
        this.ampHours = ampHours.clone();
        warden = new Warden(rig);
        machine = new RunMachine(rig, program, from);
        guard = warden.fresh(0);
        retrace = retraced ? Optional.of(new Retrace(1, rig, program, from)) : Optional.empty();
        for (int i = 0; i < 100; i++) {
            scan(0.1, Inbox.EMPTY);
        }
    }

    static double[] filled(Rig rig, double share) {
        double[] ampHours = new double[rig.cells().series()];
        Arrays.fill(ampHours, share * rig.cells().ratedAmpHours());
        return ampHours;
    }

    double volts(int cell) {
        double share = ampHours[cell] / rig.cells().ratedAmpHours();
        int i = 1;
        while (i < SHARES.length - 1 && share > SHARES[i]) {
            i++;
        }
        double part = (share - SHARES[i - 1]) / (SHARES[i] - SHARES[i - 1]);
        return VOLTS[i - 1] + part * (VOLTS[i] - VOLTS[i - 1]) + OHMS * amps;
    }

    double amps() {
        return amps;
    }

    void scan(double seconds, Inbox inbox) {
        nanos += Math.round(seconds * 1e9);
        for (int i = 0; i < ampHours.length; i++) {
            ampHours[i] += amps * seconds / 3600;
        }
        amps = orders instanceof Orders.Energised on && on.stage() == Closing.CURRENT
                ? on.way().sign() * flows.applyAsDouble(this, on) : 0;
        Scans scans = new Scans(rig, nanos).obeying(orders, nanos - stageNanos).carrying(orders, amps);
        double pack = 0;
        for (int i = 0; i < ampHours.length; i++) {
            scans.set(rig.channels(Role.CELL_VOLTS).get(i), volts(i));
            pack += volts(i);
        }
        Channel bus = rig.channel(Role.BUS_VOLTS);
        boolean tied = orders instanceof Orders.Energised on && on.stage() != Closing.NO_LOAD;
        scans.set(Role.PACK_VOLTS, pack).set(bus, tied ? pack : ((Reading.Valid) scans.reading(bus)).value());
        scans = twist.apply(scans);
        sum = sum.with(rig, scans);
        Scan scan = scans.summed(sum).scan(++number);
        Judged judged = warden.judge(guard, scan, orders, inbox);
        Next next = machine.next(state, judged.verdict(), scan, inbox);
        Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, next.wish());
        if (!stage(granted.orders()).equals(stage(orders))) {
            stageNanos = nanos;
        }
        guard = granted.guard();
        state = next.state();
        orders = granted.orders();
        events.addAll(next.events());
        retrace.ifPresent(again -> differs |= !same(again.cycle(scan, inbox), orders));
    }

    /** Leases are made anew; what they allow is the same. */
    private static boolean same(Orders one, Orders other) {
        return one instanceof Orders.Energised a && other instanceof Orders.Energised b
                ? stage(a).equals(stage(b)) && a.set().equals(b.set())
                : one.equals(other);
    }

    private static String stage(Orders orders) {
        return orders instanceof Orders.Energised on ? on.way() + " " + on.through() + " " + on.stage() : "off";
    }

    /** Scans until something holds: by seconds under current and while it waits, by ten in a rest, by tenths elsewhere. */
    void until(BooleanSupplier holds) {
        for (int i = 0; i < 200_000 && !holds.getAsBoolean(); i++) {
            boolean calm = nanos - stageNanos > 10_000_000_000L;
            boolean flowsOrWaits = state instanceof RunState.Stepping || state instanceof RunState.Waiting;
            scan(calm && flowsOrWaits ? 1 : calm && state instanceof RunState.Resting ? 10 : 0.1,
                    Inbox.EMPTY);
        }
        if (!holds.getAsBoolean()) {
            throw new AssertionError("never so; at " + state + ", " + events);
        }
    }

    /** Until this state of the machine. */
    ObedientRig reach(Class<? extends RunState> wanted) {
        until(() -> wanted.isInstance(state));
        return this;
    }

    /** To the end of the run; what ended each step. */
    List<Ended> run() {
        until(() -> state instanceof RunState.Finished || state instanceof RunState.Interrupted);
        return ends();
    }

    List<Ended> ends() {
        return events.stream().filter(e -> e instanceof Event.StepEnded).map(e -> ((Event.StepEnded) e).by()).toList();
    }

    double endedAmpHours(int step) {
        return events.stream().filter(e -> e instanceof Event.StepEnded ended && ended.step() == step)
                .mapToDouble(e -> ((Event.StepEnded) e).account().ampHours()).findFirst().orElseThrow();
    }

    /** Order of current now; empty when nothing is on, or another stage is. */
    OptionalDouble order() {
        return orders instanceof Orders.Energised on && on.stage() == Closing.CURRENT
                ? OptionalDouble.of(on.set().amps()) : OptionalDouble.empty();
    }

    boolean tripped() {
        return guard instanceof Guard.Tripped;
    }

    void ask(Request request) {
        scan(0.1, Inbox.of(request));
    }

    void stop() {
        scan(0.1, new Inbox(true, List.of()));
    }
}
