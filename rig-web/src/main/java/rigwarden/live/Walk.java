package rigwarden.live;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import rigwarden.calibration.MeterStatement;
import rigwarden.joint.Families;
import rigwarden.joint.JointOhms;
import rigwarden.paper.JointPath;
import rigwarden.paper.Spots;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;

/**
 * Leads a hand meter along the joints of a run, and makes resistances of what is typed. It looks at the newest snapshot, as every
 * viewer does, and asks the run for nothing. Any thread.
 */
public final class Walk {
    /** A rate at which a sound joint shows enough for a hand meter, of the rated capacity, 1/h: this project's assumption. */
    private static final double LEAST_C = 0.1;
    /** A joint beyond this burns: a wrong unit, or STOP. */
    private static final double MOST_OHMS = 0.005;
    private static final double OLD_SECONDS = 3;
    private static final Pattern NUMBER = Pattern.compile("[+−-]?\\d{1,4}([.]\\d{1,4})?");

    private final Rig rig;
    private final List<JointPath.Joint> joints;
    private final MeterStatement meter;
    private final Consumer<JointOhms> kept;
    private final List<JointOhms> found;
    private final Set<Integer> passed = new HashSet<>();

    /** What came of a reading. */
    public sealed interface Answer {
        /** It was kept. */
        record Taken(JointOhms joint, String words) implements Answer {}

        /** It was not; what was found, what is allowed, why, and what to do. */
        record Refused(String words) implements Answer {}
    }

    /**
     * A walk at its beginning.
     *
     * @param meter what the hand meter states, V
     * @param kept takes each resistance; may wait, since nobody but the typist waits for it
     */
    public Walk(Rig rig, MeterStatement meter, Consumer<JointOhms> kept) {
        this.rig = rig;
        this.meter = meter;
        this.kept = kept;
        joints = JointPath.of(rig);
        found = new ArrayList<>();
    }

    /** The joint where the meter goes next, of those that carry the current now; empty when all have been. */
    public synchronized Optional<JointPath.Joint> next(Optional<Snapshot> now) {
        double amps = amps(now).orElse(-1);
        return joints.stream().filter(joint -> !passed.contains(joint.place())).filter(joint -> carries(joint, amps)).findFirst();
    }

    public List<JointPath.Joint> joints() {
        return joints;
    }

    public MeterStatement meter() {
        return meter;
    }

    /** Current of the newest look, A. */
    public OptionalDouble amps(Optional<Snapshot> now) {
        Channel current = rig.channel(Role.CURRENT);
        return now.isPresent() && now.get().scan().readings().get(current.index()) instanceof Reading.Valid valid
                ? OptionalDouble.of(valid.value())
                : OptionalDouble.empty();
    }

    /** Goes past a joint that cannot be reached. */
    public synchronized void pass(int place) {
        passed.add(place);
    }

    /**
     * Takes what somebody typed.
     *
     * @param place of the joint in the walk, from 1
     * @param typed millivolts
     * @param now the newest look
     * @param ageSeconds how old it is
     */
    public synchronized Answer take(int place, String typed, Optional<Snapshot> now, double ageSeconds) {
        if (place < 1 || place > joints.size()) {
            return new Answer.Refused("There is no joint " + place + ": allowed is 1…" + joints.size() + ".");
        }
        JointPath.Joint joint = joints.get(place - 1);
        String bare = typed.strip().replace('−', '-');
        if (!NUMBER.matcher(bare).matches()) {
            return new Answer.Refused("\"" + typed.strip() + "\" is no reading: allowed are millivolts with a point and without their unit, as 4.7,"
                    + " because nobody can be sure of anything else. Type it again.");
        }
        OptionalDouble amps = amps(now);
        if (amps.isEmpty() || now.orElseThrow().over() || ageSeconds > OLD_SECONDS) {
            return new Answer.Refused("No current is known now: a reading belongs to the current of its scan. Wait until the run is seen again.");
        }
        double least = LEAST_C * rig.cells().ratedAmpHours();
        if (Math.abs(amps.getAsDouble()) < least || !carries(joint, amps.getAsDouble())) {
            return new Answer.Refused(Spots.say("%s A flow, and %s: allowed is %.1f A or more through this joint, because less shows nothing"
                    + " on a hand meter. Wait for the step with current.", Spots.number(1, amps.getAsDouble()),
                    carries(joint, amps.getAsDouble()) ? "that is too little" : "not through this joint", least));
        }
        return taken(joint, Double.parseDouble(bare) * 1e-3, amps.getAsDouble(), now.orElseThrow());
    }

    private Answer taken(JointPath.Joint joint, double volts, double amps, Snapshot now) {
        Channel current = rig.channel(Role.CURRENT);
        if (Math.abs(volts / amps) > MOST_OHMS || Math.abs(volts) > meter.range()) {
            return new Answer.Refused(Spots.say("%s mV at %s A would be %.1f mΩ: allowed is up to %.0f mΩ and %.0f mV, because a joint like that"
                    + " burns. Look at the meter's unit; if it is true, press STOP.", Spots.number(1, volts * 1e3), Spots.number(1, amps),
                    Math.abs(volts / amps) * 1e3, MOST_OHMS * 1e3, meter.range() * 1e3));
        }
        double changed = now.trends().get(current.index()).orElse(0);
        JointOhms one = JointOhms.of(joint.name(), joint.family(), volts, meter,
                new JointOhms.Current(amps, current.uncertainty(amps), changed));
        kept.accept(one);
        found.removeIf(before -> before.joint().equals(one.joint()));
        found.add(one);
        passed.add(joint.place());
        return new Answer.Taken(one, Spots.say("%s: %s mV at %s A, %s.", joint.name(), Spots.number(2, volts * 1e3), Spots.number(1, amps), words(one)));
    }

    private static boolean carries(JointPath.Joint joint, double amps) {
        return joint.device().map(Device::charges).map(charges -> charges == amps > 0).orElse(true);
    }

    /** The highest first. */
    public synchronized List<JointOhms> ranked() {
        return Families.ranked(found);
    }

    /** One sentence for each that is unlike its likes. */
    public synchronized List<String> outOfFamily() {
        return Families.outOfFamily(found);
    }

    /** A resistance as a person reads it. */
    public static String words(JointOhms joint) {
        return Spots.say("%.1f ± %.1f µΩ", joint.ohms() * 1e6, joint.expandedOhms() * 1e6);
    }
}
