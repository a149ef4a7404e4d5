package rigwarden.campaign;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.Rehearsal;
import rigwarden.loop.Recorder;
import rigwarden.program.Ended;
import rigwarden.run.Event;
import rigwarden.run.RunState;
import rigwarden.warden.Warden;

/**
 * One rehearsal of a scene with nothing wrong, from start to end, and copies of it on the way, from which cases fork. Scans count from 0,
 * which is before the first. Once made it is only read, by any number of threads.
 */
public final class Night {
    static final Recorder NOWHERE = (_, _, _, _) -> { };
    private static final int EVERY_SCANS = 6000;
    private static final int BEFORE_SCANS = 50;
    private static final long LONGEST_SCANS = 2_000_000;

    /** From this scan on the run was there. */
    private record Turn(long scan, String place) {}

    /** A step's own end. */
    private record End(long scan, int step, Ended by) {}

    private final Scene scene;
    private final long specimen;
    private final TreeMap<Long, Rehearsal> copies = new TreeMap<>();
    private final List<Turn> turns = new ArrayList<>();
    private final List<Long> openings = new ArrayList<>();
    private final Set<Integer> told = new HashSet<>();
    private final List<End> ends = new ArrayList<>();
    private final Map<Integer, Long> begins = new HashMap<>();
    private long scans;

    private Night(Scene scene, long specimen) {
        this.scene = scene;
        this.specimen = specimen;
    }

    /**
     * Rehearses a night.
     *
     * @param specimen seed of the parts' errors and of all noise
     * @throws BusFailure when a chip does not answer as it must at the start
     * @throws IllegalStateException when it trips, or does not end, although nothing is wrong
     */
    public static Night of(Scene scene, long specimen) throws BusFailure {
        Night night = new Night(scene, specimen);
        night.rehearse();
        for (Turn turn : List.copyOf(night.turns)) {
            long before = Math.max(0, turn.scan() - BEFORE_SCANS);
            night.copies.put(before, night.at(before));
        }
        return night;
    }

    private void rehearse() throws BusFailure {
        Rehearsal rehearsal = new Rehearsal(scene.rig(), scene.program(), specimen, List.of(), NOWHERE);
        copies.put(0L, rehearsal.copy(NOWHERE));
        String last = place(rehearsal);
        while (!rehearsal.over()) {
            for (Event event : rehearsal.scan()) {
                healthy(event);
            }
            scans++;
            String now = place(rehearsal);
            if (!now.equals(last)) {
                turns.add(new Turn(scans, now));
                if (rehearsal.loop().standing().state() instanceof RunState.Opening) {
                    openings.add(scans);
                }
                last = now;
            }
            if (scans % EVERY_SCANS == 0) {
                copies.put(scans, rehearsal.copy(NOWHERE));
            }
            if (scans > LONGEST_SCANS) {
                throw new UnfitNight(scene.name() + " does not end.");
            }
        }
    }

    private void healthy(Event event) {
        if (event instanceof Event.Tripped tripped) {
            throw new UnfitNight(scene.name() + ", specimen " + specimen + ", trips with nothing wrong by rule "
                    + tripped.first().rule() + ".");
        }
        if (event instanceof Event.Warned warned) {
            told.add(warned.warning().rule().number());
        }
        if (event instanceof Event.StepBegun begun) {
            begins.putIfAbsent(begun.step(), scans + 1);
        }
        if (event instanceof Event.StepEnded ended) {
            ends.add(new End(scans, ended.step(), ended.by()));
        }
    }

    /** Where a run is: state, stage and step, as the run machine has it. */
    static String place(Rehearsal rehearsal) {
        RunState state = rehearsal.loop().standing().state();
        String stage = state instanceof RunState.Closes closes ? " " + closes.stage() : state instanceof RunState.Showing s && s.off() ? " off" : "";
        return state.getClass().getSimpleName() + stage + " in step " + RunState.step(state);
    }

    /** Another rehearsal, brought to just after a scan. */
    Rehearsal at(long scan) {
        Map.Entry<Long, Rehearsal> nearest = copies.floorEntry(scan);
        return forward(nearest.getValue().copy(NOWHERE), nearest, scan);
    }

    /** The same, judged by another warden from the copy that it comes from on. */
    Rehearsal at(long scan, Warden judge) {
        Map.Entry<Long, Rehearsal> nearest = copies.floorEntry(scan);
        return forward(nearest.getValue().copy(NOWHERE, judge), nearest, scan);
    }

    private static Rehearsal forward(Rehearsal rehearsal, Map.Entry<Long, Rehearsal> nearest, long scan) {
        for (long done = nearest.getKey(); done < scan; done++) {
            rehearsal.scan();
        }
        return rehearsal;
    }

    /** Where the healthy run was after a scan; where it ended for one beyond its end. */
    String placeAt(long scan) {
        String place = "Idle in step 0";
        for (Turn turn : turns) {
            place = turn.scan() <= scan ? turn.place() : place;
        }
        return place;
    }

    /** Whether the healthy run turned from one place to another at most so many scans from this one. */
    public boolean turnsNear(long scan, long within) {
        return turns.stream().anyMatch(turn -> Math.abs(turn.scan() - scan) <= within);
    }

    /** The scans after which the run machine was in another state or stage than before, in order. */
    List<Long> turns() {
        return turns.stream().map(Turn::scan).toList();
    }

    /** Whether the healthy run ended this step in the same way, at most so many scans from this one. */
    boolean endedNear(Event.StepEnded ended, long scan, long within) {
        return ends.stream().anyMatch(end -> end.step() == ended.step() && end.by() == ended.by() && Math.abs(end.scan() - scan) <= within);
    }

    /** The scans after which a step with current began to open, in order. */
    List<Long> openings() {
        return List.copyOf(openings);
    }

    /** The scan after which a step had begun. */
    long stepScan(int step) {
        Long begun = begins.get(step);
        if (begun == null) {
            throw new StepNeverBegan("step " + step + " of " + scene.name() + " never begins.");
        }
        return begun;
    }

    /** Whether a rule gave notice although nothing was wrong. */
    boolean told(int rule) {
        return told.contains(rule);
    }

    long scans() {
        return scans;
    }

    /** In one line. */
    public String words() {
        return String.format(Locale.ROOT, "%s, specimen %d: %d scans without a trip, %d turns of the run machine", scene.name(), specimen,
                scans, turns.size());
    }

    public Scene scene() {
        return scene;
    }

    public long specimen() {
        return specimen;
    }
}
