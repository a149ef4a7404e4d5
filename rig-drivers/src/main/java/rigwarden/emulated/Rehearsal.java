package rigwarden.emulated;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.loop.Loop;
import rigwarden.loop.Pacer;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.run.PickUp;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.warden.Inbox;
import rigwarden.warden.Request;
import rigwarden.warden.Warden;

/** A run on emulated hardware: the same loop on a virtual clock, as fast as the machine allows. */
public final class Rehearsal {
    private final Rig rig;
    private final Program program;
    private final EmulatedRig emulated;
    private final Recorder recorder;
    private final Warden warden;
    private final Loop loop;
    private final List<Mishap> mishaps;
    private final Pacer pacer;
    private final Optional<PickUp> from;
    private final long beganNanos;
    private long stepNanos;
    private int step;
    private boolean asked;
    private boolean stop;
    private boolean clear;

    /**
     * A rehearsal before its first scan.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public Rehearsal(Rig rig, Program program, long seed, List<Mishap> mishaps, Recorder recorder) throws BusFailure {
        this(rig, program, new EmulatedRig(rig, seed), Optional.empty(), mishaps, recorder);
    }

    /** A rehearsal on a rig on which something was done before: nothing is energised yet, and it has been scanned at rest. */
    public Rehearsal(Rig rig, Program program, EmulatedRig emulated, List<Mishap> mishaps, Recorder recorder) {
        this(rig, program, emulated, Optional.empty(), mishaps, recorder);
    }

    /**
     * A rehearsal that goes on where another was broken off.
     *
     * @param emulated the rig as that left it
     * @param from where it goes on
     */
    public Rehearsal(Rig rig, Program program, EmulatedRig emulated, PickUp from, List<Mishap> mishaps, Recorder recorder) {
        this(rig, program, emulated, Optional.of(from), mishaps, recorder);
    }

    private Rehearsal(Rig rig, Program program, EmulatedRig emulated, Optional<PickUp> from, List<Mishap> mishaps,
            Recorder recorder) {
        this.rig = rig;
        this.program = program;
        this.emulated = emulated;
        this.from = from;
        this.recorder = recorder;
        this.mishaps = new ArrayList<>(mishaps);
        beganNanos = emulated.clock().nanos();
        warden = new Warden(rig);
        pacer = Pacer.ofScan(emulated.clock(), rig.scanNanos());
        loop = loop(Loop.fresh(warden, beganNanos, from));
    }

    private Rehearsal(Rehearsal other, Recorder recorder, Warden warden) {
        rig = other.rig;
        program = other.program;
        this.recorder = recorder;
        mishaps = new ArrayList<>(other.mishaps);
        from = other.from;
        beganNanos = other.beganNanos;
        emulated = other.emulated.copy();
        pacer = new Pacer(other.pacer, emulated.clock());
        stepNanos = other.stepNanos;
        step = other.step;
        asked = other.asked;
        stop = other.stop;
        clear = other.clear;
        this.warden = warden;
        loop = loop(other.loop.standing());
    }

    private Loop loop(Loop.Standing standing) {
        return new Loop(emulated.rigBench(), warden, new RunMachine(rig, program, from), recorder, this::inbox, standing);
    }

    /** Another rehearsal, the same in everything, that goes its own way from here and records elsewhere. */
    public Rehearsal copy(Recorder other) {
        return new Rehearsal(this, other, warden);
    }

    /** The same, judged from here on by a warden whose list of rules is as long: for the proof that leaves one out. */
    public Rehearsal copy(Recorder other, Warden judge) {
        return new Rehearsal(this, other, judge);
    }

    private Inbox inbox() {
        if (stop) {
            stop = false;
            return new Inbox(true, List.of());
        }
        if (clear) {
            clear = false;
            return Inbox.of(Request.CLEAR);
        }
        if (!asked && emulated.clock().nanos() - beganNanos > 15 * rig.scanNanos()) {
            asked = true;
            return Inbox.of(from.isPresent() ? Request.CONTINUE : RunMachine.start(program));
        }
        return Inbox.EMPTY;
    }

    /** One scan. */
    public List<Event> scan() {
        emulated.await(pacer);
        emulated.catchUp();
        if (!mishaps.isEmpty()) {
            mishaps.removeIf(this::happened);
        }
        List<Event> events = loop.cycle();
        for (Event event : events) {
            if (event instanceof Event.StepBegun begun) {
                step = begun.step();
                stepNanos = emulated.clock().nanos();
            }
        }
        return events;
    }

    private boolean happened(Mishap mishap) {
        long since = mishap.step() == 0 ? beganNanos : stepNanos;
        boolean here = mishap.step() == 0 || mishap.step() == step;
        boolean due = here && emulated.clock().nanos() - since >= mishap.afterNanos();
        if (due) {
            emulated.inflict(mishap.fault());
        }
        return due;
    }

    /** Whether the run is over: finished, or tripped. */
    public boolean over() {
        RunState state = loop.standing().state();
        return state instanceof RunState.Finished || state instanceof RunState.Interrupted;
    }

    /** A person presses STOP; it acts in the next scan. */
    public void stop() {
        stop = true;
    }

    /** A person asks for a clear; it acts in the next scan. */
    public void clear() {
        clear = true;
    }

    /** Something goes wrong, now. */
    public void inflict(BoardFault fault) {
        emulated.inflict(fault);
    }

    public EmulatedRig rig() {
        return emulated;
    }

    public Loop loop() {
        return loop;
    }

    /** Number of the step that runs, from 1; 0 before the first. */
    public int step() {
        return step;
    }
}
