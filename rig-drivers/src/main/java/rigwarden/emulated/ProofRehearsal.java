package rigwarden.emulated;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import rigwarden.loop.Pacer;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.prove.Answer;
import rigwarden.prove.Energised;
import rigwarden.prove.Outcome;
import rigwarden.prove.Proof;
import rigwarden.prove.Prompt;
import rigwarden.prove.Stops;
import rigwarden.prove.Turn;
import rigwarden.rig.Rig;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** The guided check on an emulated rig with an emulated person, in virtual time, on the real code path. */
public final class ProofRehearsal {
    /** A person who is not heard from for so long has gone home. */
    private static final double LONGEST_SECONDS = 1800;
    /** What is asked of every scan once it is over, before the rig is left, s. */
    private static final double AFTER_SECONDS = 1;

    private final Rig rig;
    private final EmulatedRig emulated;
    private final List<Mishap> mishaps;
    private final long beganNanos;
    private final List<Outcome> outcomes = new ArrayList<>();
    private final Program program;

    /** A check that has not begun; times of mishaps count from here. */
    public ProofRehearsal(Rig rig, EmulatedRig emulated, List<Mishap> mishaps) {
        this.rig = rig;
        this.emulated = emulated;
        this.mishaps = new ArrayList<>(mishaps);
        beganNanos = emulated.clock().nanos();
        program = Stops.programme(rig);
    }

    /** The programme of its energised part. */
    public Program program() {
        return program;
    }

    /**
     * The part with nothing energised.
     *
     * @param told each turn
     * @return whether the rig may be energised
     */
    public boolean atRest(Consumer<Turn> told) {
        Proof proof = new Proof(rig);
        Person person = new Person(emulated);
        Pacer pacer = Pacer.ofScan(emulated.clock(), rig.scanNanos());
        Prompt prompt = new Prompt.Watch("");
        while (seconds() < LONGEST_SECONDS) {
            emulated.await(pacer);
            emulated.catchUp();
            mishaps.removeIf(this::happened);
            Answer answer = person.hears(prompt, emulated.clock().nanos());
            Scan scan = emulated.rigBench().take();
            emulated.rigBench().apply(Orders.OFF);
            Turn turn = proof.take(scan, answer);
            told.accept(turn);
            outcomes.addAll(turn.outcomes());
            prompt = turn.prompt();
            if (turn.over()) {
                emulated.letGo();
                return proof.fit();
            }
        }
        throw new IllegalStateException("the check at rest never ends: " + prompt.words());
    }

    private boolean happened(Mishap mishap) {
        boolean due = mishap.step() == 0 && emulated.clock().nanos() - beganNanos >= mishap.afterNanos();
        if (due) {
            emulated.inflict(mishap.fault());
        }
        return due;
    }

    /**
     * The energised part, by loop, warden and machine.
     *
     * @param recorder takes every cycle's record
     * @param told what was found in a scan
     * @return scans taken
     */
    public long energised(Recorder recorder, Consumer<List<Outcome>> told) {
        Energised energised = new Energised(rig, program);
        Recorder seeing = (scan, inbox, orders, events) -> {
            List<Outcome> found = energised.take(scan, events);
            if (!found.isEmpty()) {
                told.accept(found);
            }
            recorder.offer(scan, inbox, orders, events);
        };
        Rehearsal rehearsal = new Rehearsal(rig, program, emulated, mishaps, seeing);
        long most = Math.round(LONGEST_SECONDS * 1e9 / rig.scanNanos());
        long after = Math.round(AFTER_SECONDS * 1e9 / rig.scanNanos());
        long scans = 0;
        for (long over = 0; over < after && scans < most; scans++) {
            rehearsal.scan();
            over = rehearsal.over() ? over + 1 : 0;
        }
        List<Outcome> last = energised.over();
        told.accept(last);
        outcomes.addAll(energised.outcomes());
        return scans;
    }

    /** What a person would have needed so far, s. */
    public double seconds() {
        return (emulated.clock().nanos() - beganNanos) * 1e-9;
    }

    /** All that was found so far. */
    public List<Outcome> outcomes() {
        return List.copyOf(outcomes);
    }

    /** Whether nothing was found that forbids to trust the rig. */
    public boolean passed() {
        return outcomes.stream().noneMatch(Outcome::spoils);
    }
}
