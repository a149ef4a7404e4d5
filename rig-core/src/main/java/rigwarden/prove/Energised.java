package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.HEARTBEAT;
import static rigwarden.prove.Outcome.Part.NO_LOAD;
import static rigwarden.prove.Outcome.Part.STOP;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.warden.Scan;
import rigwarden.warden.Trip;

/** What the energised part of the check shows, from its scans and from what happened in it. One thread. */
public final class Energised {
    /** What the heartbeat is proved with: the level on which the line rests while beats are withheld, in this order. */
    public static final List<String> BEATS = List.of("line low", "line high");
    private static final double LATE_SCANS = 1.5;

    private final Rig rig;
    private final Program program;
    private final Joints joints;
    private final List<Outcome> outcomes = new ArrayList<>();
    private final Set<String> proved = new HashSet<>();
    private Optional<Trip> trip = Optional.empty();
    private int heartbeats;
    private int step;

    /** {@code program} is that of {@link Stops#programme}. */
    public Energised(Rig rig, Program program) {
        this.rig = rig;
        this.program = program;
        joints = new Joints(rig);
    }

    /** Takes a scan with what happened in it; what was found in it. */
    public List<Outcome> take(Scan scan, List<Event> events) {
        int before = outcomes.size();
        joints.take(scan);
        events.forEach(this::take);
        return List.copyOf(outcomes.subList(before, outcomes.size()));
    }

    private void take(Event event) {
        switch (event) {
            case Event.StepBegun e -> step = e.step();
            case Event.HeartbeatProved e -> {
                outcomes.add(letGo(level(heartbeats), e.seconds()));
                heartbeats++;
            }
            case Event.NoLoadShown e -> outcomes.add(Outcome.passed(NO_LOAD, e.source(), String.format(Locale.ROOT, "%.2f V without load", e.volts())));
            case Event.StopProved e -> {
                String name = e.device() + " " + Stops.word(e.element());
                proved.add(name);
                joints.stopped(e.element(), e.seconds());
                outcomes.add(Outcome.passed(STOP, name, String.format(Locale.ROOT,
                        "the %s alone stopped the current %.1f s after its order", Stops.word(e.element()), e.seconds())));
            }
            case Event.StepEnded e -> {
                if (e.by() != Ended.PROVED && e.by() != Ended.TRIPPED) {
                    outcomes.add(Outcome.failed(STOP, name(), unproved(e.by())));
                }
            }
            case Event.Tripped e -> {
                if (trip.isEmpty()) {
                    trip = Optional.of(e.first());
                    outcomes.add(TripOutcome.of(e.first(), name()));
                }
            }
            case Event.Started _, Event.Continued _, Event.NotContinued _, Event.Waited _, Event.Warned _, Event.StopRequested _, Event.Cleared _,
                    Event.Finished _ -> { }
        }
    }

    /**
     * The stated hold counts from the last change of the line, at most a scan before {@code seconds} begin, and is seen up to a scan late; the warden, which
     * must never trip a sound rig, allows more on either side.
     */
    private Outcome letGo(String level, double seconds) {
        double scan = rig.scanNanos() * 1e-9;
        double most = rig.guards().heartbeatLongest() + rig.guards().contactLagSeconds() + LATE_SCANS * scan;
        double least = rig.guards().heartbeatShortest() - LATE_SCANS * scan;
        String words = String.format(Locale.ROOT, "beats withheld, the %s: the contactor was open %.1f s later", level, seconds);
        if (seconds > most || seconds < least) {
            return Outcome.failed(HEARTBEAT, level, words + String.format(Locale.ROOT, "; it should be %.1f…%.1f s: look at the stage's timing part",
                    rig.guards().heartbeatShortest(), rig.guards().heartbeatLongest()));
        }
        return Outcome.passed(HEARTBEAT, level, words);
    }

    private static String level(int heartbeats) {
        return BEATS.get(heartbeats % BEATS.size());
    }

    private String name() {
        return step == 0 ? "before the first current" : Stops.name(rig, stop(step));
    }

    private Step.ProveStop stop(int number) {
        return (Step.ProveStop) program.steps().get(number - 1);
    }

    private static String unproved(Ended by) {
        return switch (by) {
            case CEILING -> "nothing proved: a cell is too full for this current; discharge them a little and prove again";
            case CUT_OFF -> "nothing proved: a cell is too empty for this current; charge them a little and prove again";
            case NEVER_FIT -> "nothing proved: the cells are too warm or too cold for this current";
            case STOPPED -> "nothing proved: a person stopped it";
            case TIME -> "nothing proved: the current did not come, or did not go, in time; look at the device and its relay";
            case CHARGER, SINK, PROTECTION -> "nothing proved: the current ended before anything was opened, by the " + by.word();
            case TAPER, SETTLED, PROVED, CHARGE_REACHED, NOT_CONTINUED, CUT, TRIPPED -> "nothing proved: ended by " + by.word();
        };
    }

    /** What is known when it is over, besides what was told on the way: what was not reached, and the joints. */
    public List<Outcome> over() {
        List<Outcome> last = new ArrayList<>();
        Set<String> named = new HashSet<>(proved);
        outcomes.stream().filter(o -> o.part() == STOP).map(Outcome::what).forEach(named::add);
        for (Step one : program.steps()) {
            String name = Stops.name(rig, (Step.ProveStop) one);
            if (named.add(name)) {
                last.add(Outcome.failed(STOP, name, "not reached"));
            }
        }
        for (int level = heartbeats; level < BEATS.size(); level++) {
            last.add(Outcome.failed(HEARTBEAT, level(level), "not shown to let go"));
        }
        last.addAll(joints.look());
        outcomes.addAll(last);
        return List.copyOf(last);
    }

    /** All that was found so far. */
    public List<Outcome> outcomes() {
        return List.copyOf(outcomes);
    }
}
