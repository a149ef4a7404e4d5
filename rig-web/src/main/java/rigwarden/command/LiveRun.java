package rigwarden.command;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import rigwarden.live.Desk;
import rigwarden.loop.Bench;
import rigwarden.loop.Loop;
import rigwarden.loop.Pacer;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.run.PickUp;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.warden.Orders;
import rigwarden.warden.Warden;

/**
 * The loop of a real run, on the clock of the wall. It begins by asking for nothing: a start comes from the desk. It goes on
 * watching after a trip until a person has cleared that, and after the end until a weld would have shown.
 */
final class LiveRun {
    private final Rig rig;
    private final Bench bench;
    private final Loop loop;
    private final Desk desk;
    private final Pacer pacer;
    private final BooleanSupplier end;
    private final Consumer<List<Event>> told;
    private final Attendance attendance;
    private final boolean attended;
    private boolean started;
    private boolean stopping;
    private boolean cleared;
    private long scans;

    /**
     * A run before its first scan.
     *
     * @param bench the hardware
     * @param recorder takes every cycle's record
     * @param desk where wishes lie; a stop is put on it when {@code end} says so
     * @param nanos monotonic time now
     * @param end whether the process shall end
     * @param told what happened, on the control thread
     * @param from where it goes on, if another run was broken off there
     */
    LiveRun(Rig rig, Program program, Bench bench, Recorder recorder, Desk desk, Pacer pacer, long nanos,
            BooleanSupplier end, Consumer<List<Event>> told, Optional<PickUp> from) {
        this.rig = rig;
        this.bench = bench;
        this.desk = desk;
        this.pacer = pacer;
        this.end = end;
        this.told = told;
        attended = !program.unattended();
        attendance = new Attendance(rig);
        Warden warden = new Warden(rig);
        Recorder seeing = (scan, inbox, orders, events) -> {
            attendance.take(scan);
            if (events.stream().anyMatch(Event.Started.class::isInstance)) {
                attendance.shown(scan.nanos());
            }
            left(scan.nanos());
            recorder.offer(scan, inbox, orders, events);
        };
        loop = new Loop(bench, warden, new RunMachine(rig, program, from), seeing, desk, Loop.fresh(warden, nanos, from));
    }

    /** A run that is to be attended and is not is stopped. */
    private void left(long nanos) {
        if (attended && attendance.goneNanos(nanos) > Attendance.LONGEST_NANOS && flowing()) {
            System.out.println("Nobody has turned the arm key for 15 min: the run is stopped.");
            desk.stop();
        }
    }

    private boolean flowing() {
        RunState state = loop.standing().state();
        return !(state instanceof RunState.Idle || state instanceof RunState.Finished || state instanceof RunState.Interrupted);
    }

    /**
     * Runs to the end.
     *
     * @return the scans that were taken
     */
    long run() {
        try {
            cycles();
        } finally {
            bench.apply(Orders.OFF_NOW);
        }
        return scans;
    }

    private void cycles() {
        long clean = Math.round((rig.busSide().decaySeconds() + 1) * 1e9) / rig.scanNanos();
        for (long after = 0; after < clean; ) {
            pacer.await();
            if (end.getAsBoolean() && !stopping) {
                stopping = true;
                desk.stop();
            }
            List<Event> events = loop.cycle();
            scans++;
            events.forEach(this::noted);
            if (!events.isEmpty()) {
                told.accept(events);
            }
            after = over() && !flowing() ? after + 1 : 0;
        }
    }

    /** A run that was started, tripped and cleared is over, until somebody starts it anew. */
    private void noted(Event event) {
        if (event instanceof Event.Started) {
            started = true;
            cleared = false;
        } else if (event instanceof Event.Cleared) {
            cleared = started;
        }
    }

    private boolean over() {
        return stopping || cleared || loop.standing().state() instanceof RunState.Finished;
    }
}
