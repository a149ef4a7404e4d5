package rigwarden.warden;

import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** The current against what was ordered. */
final class CurrentRules {
    private static final Set<Role> SHUNT = Set.of(Role.CURRENT);
    /** Time that source or sink may need to reach a new set point, beyond two of its polls. */
    private static final long SETTLING_NANOS = 1_000_000_000L;
    /** After the first order of current, before its absence counts. */
    private static final long START_NANOS = 4_000_000_000L;
    private static final double LEAST_ORDERED_A = 2;

    private CurrentRules() {}

    static List<Rule> of(Rig rig) {
        long polls = 2 * Math.max(rig.source().pollNanos(), rig.sink().pollNanos());
        long settling = polls + SETTLING_NANOS;
        return List.of(
                Rules.trips(11, "current above order",
                        "The current is above 110 % of what was ordered (the larger of the last two set points).",
                        SHUNT, "110 % of the order + uncertainty + 1 A", 3, view -> above(view, 1.1, settling)),
                Rules.trips(12, "current far above order",
                        "The current is above 150 % of what was ordered (the larger of the last two set points).",
                        SHUNT, "150 % of the order + uncertainty + 1 A", 0.2, view -> above(view, 1.5, settling)),
                Rules.trips(13, "no current",
                        "Current was ordered and less than a tenth of it flows.",
                        SHUNT, "10 % of the order, after 4 s", 0.5, view -> absent(view, settling)),
                Rules.trips(14, "current the wrong way",
                        "The current flows against the way that is on.",
                        SHUNT, "1 A + uncertainty", 0.3, CurrentRules::reversed),
                Rules.weld(15, "current although off",
                        "Current flows 0.5 s after everything was ordered off: a contact is welded, a stop did not act.",
                        SHUNT, "1 A + uncertainty", 0.2, CurrentRules::afterOff));
    }

    /** The larger of the last two set points while the newer is young, else the newer; A. */
    private static double expected(View view, long settling) {
        InForce now = view.memory().inForce();
        if (now.stage() != Closing.CURRENT) {
            return 0;
        }
        boolean young = view.nanos() - now.ampsSinceNanos() <= settling;
        return young ? Math.max(now.amps(), now.earlierAmps()) : now.amps();
    }

    private static Breach above(View view, double factor, long settling) {
        Channel current = view.places().current;
        if (!view.energised() || !view.valid(current)) {
            return Breach.NONE;
        }
        double amps = Math.abs(view.value(current));
        double limit = factor * expected(view, settling) + current.uncertainty(amps) + Envelope.NO_CURRENT_A;
        return amps > limit ? new Breach(current.index(), view.value(current), limit) : Breach.NONE;
    }

    private static Breach absent(View view, long settling) {
        Channel current = view.places().current;
        InForce now = view.memory().inForce();
        boolean due = view.at(Closing.CURRENT) && view.stageNanos() > START_NANOS
                && view.nanos() - now.ampsSinceNanos() > settling;
        if (!due || now.amps() < LEAST_ORDERED_A || !view.valid(current)) {
            return Breach.NONE;
        }
        double amps = view.value(current) * now.way().sign();
        double limit = 0.1 * now.amps();
        return amps < limit ? new Breach(current.index(), view.value(current), limit) : Breach.NONE;
    }

    private static Breach reversed(View view) {
        Channel current = view.places().current;
        if (!view.energised() || !view.valid(current)) {
            return Breach.NONE;
        }
        double amps = view.value(current) * view.memory().inForce().way().sign();
        double limit = Envelope.NO_CURRENT_A + current.uncertainty(amps);
        return amps < -limit ? new Breach(current.index(), view.value(current), limit) : Breach.NONE;
    }

    private static Breach afterOff(View view) {
        Channel current = view.places().current;
        if (view.energised() || view.stageNanos() < ContactorRules.OFF_GRACE_NANOS || !view.valid(current)) {
            return Breach.NONE;
        }
        double amps = view.value(current);
        double limit = Envelope.NO_CURRENT_A + current.uncertainty(amps);
        return Math.abs(amps) > limit ? new Breach(current.index(), amps, limit) : Breach.NONE;
    }
}
