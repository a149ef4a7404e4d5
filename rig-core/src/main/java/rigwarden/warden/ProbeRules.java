package rigwarden.warden;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** Warmth that should not be there, and warmth that should: a cell that warms at rest, a probe that fell off. */
final class ProbeRules {
    private static final long SETTLED_NANOS = 5_400_000_000_000L;
    private static final double AT_REST_K = 2;
    /** A person who moves it, or a plug that is touched, is over in less. */
    private static final long UNSEEN_NANOS = 10_000_000_000L;
    /** A difference below so many uncertainties says nothing. */
    private static final double CERTAIN = 3;
    /** A joint carries at least this share of its cell's warmth over the room. */
    private static final double FOLLOWS = 0.25;

    private ProbeRules() {}

    static List<Rule> of(Rig rig) {
        List<Rule> rules = new ArrayList<>(List.of(
                Rules.warmth(29, "cell warms at rest",
                        "Without any current a cell warms by itself, and the room does not.",
                        Set.of(Role.BODY, Role.ROOM), "2 K in half an hour, after 90 min", 0, Clearing.CALM,
                        ProbeRules::warmsAtRest),
                Rules.warmth(30, "joint probe does not follow",
                        "A cell is warm and the probe on its joint is not: a probe that fell off reads cool.",
                        Set.of(Role.STUD, Role.BAR, Role.BODY, Role.ROOM),
                        "a quarter of the cell's warmth over the room, where that can be told", 60, Clearing.CALM,
                        ProbeRules::doesNotFollow)));
        if (!rig.channels(Role.LOOSE).isEmpty()) {
            rules.add(Rules.warns(58, "loose probe not seen",
                    "The probe that is carried about says nothing, or nothing that can be: its wire is off or broken. Nothing else is judged by it.",
                    Set.of(Role.LOOSE), "10 s, or the range of the channel", 0, ProbeRules::looseUnseen));
        }
        return rules;
    }

    private static Breach looseUnseen(View view) {
        for (Channel loose : view.places().carried) {
            switch (view.reading(loose)) {
                case Reading.Failed failed -> {
                    long unseen = view.nanos() - failed.sinceNanos();
                    if (unseen >= UNSEEN_NANOS) {
                        return new Breach(loose.index(), unseen * 1e-9, UNSEEN_NANOS * 1e-9);
                    }
                }
                case Reading.Valid valid -> {
                    long old = view.nanos() - valid.takenNanos();
                    if (old >= UNSEEN_NANOS + loose.periodNanos()) {
                        return new Breach(loose.index(), old * 1e-9, UNSEEN_NANOS * 1e-9);
                    }
                    if (!loose.plausible(valid.value())) {
                        return new Breach(loose.index(), valid.value(), valid.value() < loose.lowest() ? loose.lowest() : loose.highest());
                    }
                }
            }
        }
        return Breach.NONE;
    }

    private static Breach warmsAtRest(View view) {
        RestTrail rest = view.memory().past().rest();
        if (view.energised() || !rest.whole() || view.stageNanos() < SETTLED_NANOS) {
            return Breach.NONE;
        }
        double limit = Math.max(0, rest.roomRise()) + AT_REST_K;
        double[] rises = rest.bodyRises();
        for (int i = 0; i < rises.length; i++) {
            if (rises[i] > limit) {
                return new Breach(view.places().bodies[i].index(), rises[i], limit);
            }
        }
        return Breach.NONE;
    }

    private static Breach doesNotFollow(View view) {
        Places places = view.places();
        if (!view.at(Closing.CURRENT) || !view.valid(places.room)) {
            return Breach.NONE;
        }
        double room = view.value(places.room);
        for (Channel joint : places.joints) {
            for (Channel body : places.bodies) {
                if (body.cell() == joint.cell() && view.valid(joint) && view.valid(body)) {
                    double warmth = view.value(body) - room;
                    double certain = CERTAIN * Math.hypot(joint.offsetU(), places.room.offsetU());
                    double limit = room + FOLLOWS * warmth;
                    if (warmth > certain && view.value(joint) < limit) {
                        return new Breach(joint.index(), view.value(joint), limit);
                    }
                }
            }
        }
        return Breach.NONE;
    }
}
