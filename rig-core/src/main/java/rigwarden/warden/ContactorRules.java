package rigwarden.warden;

import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** Loop, coil supply, contactor: what was ordered against what is seen by three separate senses. */
final class ContactorRules {
    /** After Off, before a contact that still carries counts as welded. */
    static final long OFF_GRACE_NANOS = 500_000_000L;
    /** After a stage began, before its contact must be closed. */
    private static final long CLOSING_NANOS = 300_000_000L;
    /** First beats, before the coil supply must be alive. */
    private static final long COIL_NANOS = 1_500_000_000L;
    private static final long PRECHARGE_NANOS = 5_000_000_000L;

    private ContactorRules() {}

    static List<Rule> of(Rig rig) {
        long letsGo = Math.round(rig.guards().heartbeatLongest() * 1e9) + 2 * rig.scanNanos();
        long shortest = Math.round(rig.guards().heartbeatShortest() * 1e9) - 3 * rig.scanNanos();
        long decay = Math.round(rig.busSide().decaySeconds() * 1e9);
        Set<Role> feedback = Set.of(Role.FEEDBACK);
        Set<Role> stopped = Set.of(Role.CURRENT, Role.FEEDBACK);
        return List.of(
                Rules.weld(39, "relay does not stop alone",
                        "A proof opened the device's own relay alone, and the current did not stop.",
                        stopped, "1 A + uncertainty 0.5 s after the order", 0.1,
                        view -> flows(view, view.at(Closing.RELAY_ALONE))),
                Rules.weld(40, "contactor does not stop alone",
                        "A proof opened the contactor alone, and the current did not stop, or its feedback says closed.",
                        stopped, "1 A + uncertainty, or closed, 0.5 s after the order", 0.1,
                        view -> holds(view, view.at(Closing.CONTACTOR_ALONE))),
                Rules.trips(41, "loop open", "The loop of normally-closed contacts is open.",
                        Set.of(Role.LOOP), "closed", 0, view -> off(view, view.places().loop, true)),
                Rules.trips(42, "coil supply dead", "Beats are given and the coil supply is dead.",
                        Set.of(Role.COIL_FEED), "alive", 0.1,
                        view -> off(view, view.places().coilFeed, beating(view))),
                Rules.trips(43, "contactor not closed", "The contactor is ordered closed and its feedback says open.",
                        feedback, "closed", 0.1, view -> off(view, view.places().feedback, mustBeClosed(view))),
                Rules.trips(44, "heartbeat stage holds",
                        "Beats were withheld and the contactor did not let go: the computer's death would not open it.",
                        feedback, "open after the stage's longest hold", 0,
                        view -> on(view, view.at(Closing.SILENCE) && view.stageNanos() > letsGo)),
                Rules.weld(45, "contactor closed although off",
                        "Everything is ordered off and the contactor's feedback says closed.",
                        feedback, "open 0.5 s after the order", 0.1,
                        view -> on(view, !view.energised() && view.stageNanos() > OFF_GRACE_NANOS)),
                Rules.weld(46, "bus still at the pack's voltage",
                        "After the bus should have emptied it is within 5 % of the pack: a welded contact.",
                        Set.of(Role.BUS_VOLTS, Role.PACK_VOLTS), "5 % after the proved decay time", 0.3,
                        view -> busHolds(view, decay)),
                Rules.trips(48, "contactor closed in pre-charge",
                        "The contactor's feedback says closed while it is not ordered yet: in pre-charge, or at no load.",
                        feedback, "open", 0, view -> on(view, view.at(Closing.PRECHARGE) || view.at(Closing.NO_LOAD))),
                Rules.trips(49, "contactor let go too soon",
                        "Beats were withheld, and the contactor opened while the stage still had to hold, or with the coil "
                                + "supply alive: this proves nothing.",
                        Set.of(Role.FEEDBACK, Role.COIL_FEED), "the stage's shortest hold; coil supply dead", 0,
                        view -> tooSoon(view, shortest)),
                Rules.trips(47, "pre-charge too slow", "The bus did not come within 5 % of the pack in 5 s.",
                        Set.of(Role.BUS_VOLTS, Role.PACK_VOLTS), "5 s", 0, ContactorRules::slowPrecharge));
    }

    private static boolean beating(View view) {
        if (!view.energised() || view.at(Closing.SILENCE)) {
            return false;
        }
        return view.nanos() - view.memory().inForce().pathSinceNanos() > COIL_NANOS;
    }

    private static boolean mustBeClosed(View view) {
        return view.at(Closing.CURRENT) || view.at(Closing.RELAY_ALONE) || view.at(Closing.CONTACT) && view.stageNanos() > CLOSING_NANOS;
    }

    private static Breach off(View view, Channel channel, boolean due) {
        return due && view.off(channel) ? new Breach(channel.index(), 0, 1) : Breach.NONE;
    }

    private static Breach on(View view, boolean due) {
        Channel feedback = view.places().feedback;
        return due && view.on(feedback) ? new Breach(feedback.index(), 1, 0) : Breach.NONE;
    }

    private static Breach flows(View view, boolean due) {
        Channel current = view.places().current;
        if (!due || view.stageNanos() <= OFF_GRACE_NANOS || !view.valid(current)) {
            return Breach.NONE;
        }
        double amps = Math.abs(view.value(current));
        double limit = Envelope.NO_CURRENT_A + current.uncertainty(amps);
        return amps > limit ? new Breach(current.index(), view.value(current), limit) : Breach.NONE;
    }

    private static Breach holds(View view, boolean due) {
        Breach closed = on(view, due && view.stageNanos() > OFF_GRACE_NANOS);
        return closed.found() ? closed : flows(view, due);
    }

    private static Breach tooSoon(View view, long shortest) {
        Places places = view.places();
        boolean open = view.at(Closing.SILENCE) && view.off(places.feedback);
        return open && (view.stageNanos() < shortest || view.on(places.coilFeed))
                ? new Breach(places.feedback.index(), view.stageNanos() * 1e-9, shortest * 1e-9)
                : Breach.NONE;
    }

    private static Breach busHolds(View view, long decay) {
        Places places = view.places();
        if (view.energised() || view.stageNanos() <= decay || !view.valid(places.pack)
                || !Sides.match(view.scan(), places.pack, places.bus)) {
            return Breach.NONE;
        }
        return new Breach(places.bus.index(), view.value(places.bus), (1 - Sides.SHARE) * view.value(places.pack));
    }

    private static Breach slowPrecharge(View view) {
        Places places = view.places();
        if (!view.at(Closing.PRECHARGE) || view.stageNanos() <= PRECHARGE_NANOS || !view.valid(places.bus)) {
            return Breach.NONE;
        }
        return Sides.match(view.scan(), places.pack, places.bus)
                ? Breach.NONE
                : new Breach(places.bus.index(), view.value(places.bus), 5);
    }
}
