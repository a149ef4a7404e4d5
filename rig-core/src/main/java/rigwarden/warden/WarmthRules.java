package rigwarden.warden;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;

/** Temperatures of cells and of everything that the current warms. */
final class WarmthRules {
    private static final double HOLD_S = 1;
    private static final long EARLY_NANOS = 300_000_000_000L;
    private static final double EARLY_LEAST_K_PER_MIN = 3;
    private static final double LIKES_FACTOR = 3;
    private static final double ROOM_DRIFT_K = 5;
    private static final Set<Role> BODIES = Set.of(Role.BODY);
    private static final Set<Role> WARMED = Set.of(Role.STUD, Role.BAR, Role.SHUNT_BODY, Role.CONTACTOR_BODY);
    private static final Set<Role> JOINTS = Set.of(Role.STUD, Role.BAR);

    private WarmthRules() {}

    static List<Rule> of(Trips trips) {
        return List.of(
                Rules.warmth(21, "cell too warm", "A cell's body is too warm for the way that is on, or for rest.",
                        BODIES, plain(trips.chargingHighCelsius()) + " °C charging, " + plain(trips.dischargingHighCelsius()) + " °C else", HOLD_S, Clearing.COOLED,
                        WarmthRules::cellWarm),
                Rules.warmth(22, "cell too cold", "A cell's body is too cold for the way that is on, or for rest.",
                        BODIES, plain(trips.chargingLowCelsius()) + " °C charging, " + plain(trips.dischargingLowCelsius()) + " °C else", HOLD_S, Clearing.WARMED,
                        WarmthRules::cellCold),
                Rules.warmth(23, "hot joint", "A terminal, lug, shunt or contactor is too hot.",
                        WARMED, plain(trips.jointCelsius()) + " °C", HOLD_S, Clearing.COOLED, WarmthRules::hot),
                Rules.warmth(24, "hot over the room", "A terminal, lug, shunt or contactor is too far over the room.",
                        Set.of(Role.STUD, Role.BAR, Role.SHUNT_BODY, Role.CONTACTOR_BODY, Role.ROOM), plain(trips.jointOverRoomKelvin()) + " K", HOLD_S, Clearing.COOLED,
                        WarmthRules::overRoom),
                Rules.warmth(25, "terminal over its cell", "A terminal is too far over its own cell.",
                        Set.of(Role.STUD, Role.BAR, Role.BODY), plain(trips.jointOverCellKelvin()) + " K", HOLD_S, Clearing.COOLED, WarmthRules::overCell),
                Rules.warmth(26, "terminal warms fast",
                        "In the first five minutes of current a terminal warms too fast, by itself or beside its likes.",
                        JOINTS, "15 K/min, or 3 × its likes and over 3 K/min, over half a minute", HOLD_S, Clearing.CALM,
                        WarmthRules::early),
                Rules.warmth(27, "terminal warms on", "After five minutes of current a terminal still warms fast.",
                        JOINTS, "2 K/min over two minutes", HOLD_S, Clearing.CALM, WarmthRules::late),
                Rules.warmth(28, "terminal over its likes", "A terminal is warmer than the median of its likes.",
                        JOINTS, "5 K", 60, Clearing.CALM, WarmthRules::overLikes));
    }

    /** Whole figures without a point, and a true minus. */
    private static String plain(double value) {
        String text = value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
        return text.replace('-', '−');
    }

    private static Breach cellWarm(View view) {
        double limit = view.energised(Way.CHARGE)
                ? view.places().trips.chargingHighCelsius()
                : view.places().trips.dischargingHighCelsius();
        return above(view, view.places().bodies, limit, 0);
    }

    private static Breach cellCold(View view) {
        Trips trips = view.places().trips;
        double limit = view.energised(Way.CHARGE) ? trips.chargingLowCelsius() : trips.dischargingLowCelsius();
        for (Channel body : view.places().bodies) {
            if (view.valid(body) && view.value(body) - body.offsetU() < limit) {
                return new Breach(body.index(), view.value(body), limit);
            }
        }
        return Breach.NONE;
    }

    private static Breach hot(View view) {
        return above(view, view.places().warmed, view.places().trips.jointCelsius(), 0);
    }

    /** Over a limit that is itself known to within so much, K: a difference has the uncertainty of both its probes. */
    private static Breach above(View view, Channel[] places, double limit, double limitU) {
        Breach worst = Breach.NONE;
        for (Channel place : places) {
            if (view.valid(place)) {
                double celsius = view.value(place);
                if (celsius + Math.hypot(place.offsetU(), limitU) > limit && (!worst.found() || celsius > worst.value())) {
                    worst = new Breach(place.index(), celsius, limit);
                }
            }
        }
        return worst;
    }

    private static Breach overRoom(View view) {
        Channel room = view.places().room;
        if (!view.valid(room)) {
            return Breach.NONE;
        }
        double now = view.value(room);
        double reference = view.energised()
                ? Math.min(now, view.memory().inForce().roomCelsius() + ROOM_DRIFT_K)
                : now;
        return above(view, view.places().warmed, reference + view.places().trips.jointOverRoomKelvin(), room.offsetU());
    }

    private static Breach overCell(View view) {
        for (Channel joint : view.places().joints) {
            for (Channel body : view.places().bodies) {
                if (body.cell() == joint.cell() && view.valid(joint) && view.valid(body)) {
                    double limit = view.value(body) + view.places().trips.jointOverCellKelvin();
                    if (view.value(joint) + Math.hypot(joint.offsetU(), body.offsetU()) > limit) {
                        return new Breach(joint.index(), view.value(joint), limit);
                    }
                }
            }
        }
        return Breach.NONE;
    }

    private static Breach early(View view) {
        if (!flowing(view) || view.nanos() - view.memory().inForce().pathSinceNanos() > EARLY_NANOS) {
            return Breach.NONE;
        }
        Breach stud = early(view, view.places().studs);
        return stud.found() ? stud : early(view, view.places().bars);
    }

    /** Like with like: studs among studs, bars among bars. */
    private static Breach early(View view, Channel[] likes) {
        Trail trail = view.memory().past().trail();
        for (Channel joint : likes) {
            double rise = trail.risePerMinute(joint.index(), 3);
            if (rise <= EARLY_LEAST_K_PER_MIN) {
                continue;
            }
            double others = medianOfOthers(likes, joint, trail);
            boolean alone = rise > Envelope.TERMINAL_EARLY_K_PER_MIN;
            boolean beside = likes.length > 2 && rise > LIKES_FACTOR * others;
            if (alone || beside) {
                return new Breach(joint.index(), rise,
                        alone ? Envelope.TERMINAL_EARLY_K_PER_MIN : LIKES_FACTOR * others);
            }
        }
        return Breach.NONE;
    }

    private static double medianOfOthers(Channel[] likes, Channel joint, Trail trail) {
        return Arrays.stream(likes)
                .filter(other -> other != joint)
                .mapToDouble(other -> trail.risePerMinute(other.index(), 3))
                .sorted()
                .skip(Math.max(0, (likes.length - 2) / 2))
                .findFirst()
                .orElse(0);
    }

    private static Breach late(View view) {
        if (!flowing(view) || view.nanos() - view.memory().inForce().pathSinceNanos() <= EARLY_NANOS) {
            return Breach.NONE;
        }
        for (Channel joint : view.places().joints) {
            double rise = view.memory().past().trail().risePerMinute(joint.index(), 12);
            if (rise > Envelope.TERMINAL_LATE_K_PER_MIN) {
                return new Breach(joint.index(), rise, Envelope.TERMINAL_LATE_K_PER_MIN);
            }
        }
        return Breach.NONE;
    }

    private static boolean flowing(View view) {
        return view.at(Closing.CURRENT);
    }

    /** Two studs of one cell are alike; each is compared with the median of all, its own reading included. */
    private static Breach overLikes(View view) {
        if (!flowing(view)) {
            return Breach.NONE;
        }
        Breach stud = overLikes(view, view.places().studs);
        return stud.found() ? stud : overLikes(view, view.places().bars);
    }

    private static Breach overLikes(View view, Channel[] likes) {
        if (likes.length < 2) {
            return Breach.NONE;
        }
        double lowest = Double.MAX_VALUE;
        double highest = -Double.MAX_VALUE;
        int hottest = -1;
        for (Channel joint : likes) {
            if (!view.valid(joint)) {
                return Breach.NONE;
            }
            double celsius = view.value(joint);
            lowest = Math.min(lowest, celsius);
            if (celsius > highest) {
                highest = celsius;
                hottest = joint.index();
            }
        }
        if (highest <= lowest + Envelope.TERMINAL_OVER_LIKES_K) {
            return Breach.NONE;
        }
        double median = likes.length == 2 ? lowest : view.median(likes);
        double limit = median + Envelope.TERMINAL_OVER_LIKES_K + likes[0].offsetU();
        return highest > limit ? new Breach(hottest, highest, limit) : Breach.NONE;
    }
}
