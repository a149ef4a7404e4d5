package rigwarden.warden;

import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
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
    private static final double APART_SHARE = 0.05;
    private static final double APART_A = 0.5;

    private CurrentRules() {}

    static List<Rule> of(Rig rig) {
        Pace[] paces = rig.devices().stream().map(Pace::of).toArray(Pace[]::new);
        return List.of(
                Rules.trips(11, "current above order",
                        "The current is above 110 % of what was ordered (the larger of the last two set points).",
                        SHUNT, "110 % of the order + uncertainty + 1 A", 3, view -> above(view, 1.1, paces)),
                Rules.trips(12, "current far above order",
                        "The current is above 150 % of what was ordered (the larger of the last two set points).",
                        SHUNT, "150 % of the order + uncertainty + 1 A", 0.2, view -> above(view, 1.5, paces)),
                Rules.trips(13, "no current",
                        "Current was ordered and less than a tenth of it flows; 1 A where source or sink does as it likes.",
                        SHUNT, "10 % of the order, after 4 s or its start time", 0.5, view -> absent(view, paces)),
                Rules.trips(14, "current the wrong way",
                        "The current flows against the way that is on.",
                        SHUNT, "1 A + uncertainty", 0.3, CurrentRules::reversed),
                Rules.weld(15, "current although off",
                        "Current flows 0.5 s after everything was ordered off: a contact is welded, a stop did not act.",
                        SHUNT, "1 A + uncertainty", 0.2, CurrentRules::afterOff),
                Rules.trips(38, "shunt against device",
                        "The shunt and the device that works disagree about the current: one of them is wrong, and perhaps every ampere-hour with it.",
                        Set.of(Role.CURRENT, Role.SOURCE_AMPS, Role.SINK_AMPS), "5 % + 0.5 A + uncertainties", 10, CurrentRules::apart));
    }

    /**
     * How soon a device follows.
     *
     * @param settlingNanos until a new set point counts alone
     * @param startNanos until the first current must flow
     * @param pauseNanos for how long it may rest by itself
     * @param leastShare part of the order that must flow; of a switched device 1 A, whatever the order
     */
    private record Pace(long settlingNanos, long startNanos, long pauseNanos, double leastShare) {
        static Pace of(Device device) {
            return switch (device) {
                case Device.Programmed p -> new Pace(2 * p.instrument().pollNanos() + SETTLING_NANOS, START_NANOS, 0, 0.1);
                case Device.PlainCharger _, Device.Inverter _ -> {
                    long pause = Math.round(device.restsSeconds() * 1e9);
                    long start = Math.round(device.startSeconds() * 1e9) + pause + START_NANOS;
                    yield new Pace(start, start, pause, Envelope.NO_CURRENT_A / device.maxAmps());
                }
            };
        }
    }

    /** The larger of the last two set points while the newer is young, else the newer; A. */
    private static double expected(View view, Pace[] paces) {
        InForce now = view.memory().inForce();
        switch (now.stage()) {
            case PRECHARGE -> {
                return filling(view);
            }
            case NO_LOAD, CONTACT, SILENCE -> {
                return 0;
            }
            case CURRENT, RELAY_ALONE, CONTACTOR_ALONE -> { }
        }
        boolean young = view.nanos() - now.ampsSinceNanos() <= paces[now.through()].settlingNanos();
        return young ? Math.max(now.amps(), now.earlierAmps()) : now.amps();
    }

    /** Through the pre-charge resistor flows at most what the pack drives into an empty bus. */
    private static double filling(View view) {
        Places places = view.places();
        return view.valid(places.pack) ? view.value(places.pack) / places.rig.busSide().prechargeOhms() : 0;
    }

    private static Breach above(View view, double factor, Pace[] paces) {
        Channel current = view.places().current;
        if (!view.energised() || !view.valid(current)) {
            return Breach.NONE;
        }
        double amps = Math.abs(view.value(current));
        double limit = factor * expected(view, paces) + current.uncertainty(amps) + Envelope.NO_CURRENT_A;
        return amps > limit ? new Breach(current.index(), view.value(current), limit) : Breach.NONE;
    }

    private static Breach absent(View view, Pace[] paces) {
        Channel current = view.places().current;
        InForce now = view.memory().inForce();
        Pace pace = paces[now.through()];
        boolean due = view.at(Closing.CURRENT) && view.stageNanos() > pace.startNanos()
                && view.nanos() - now.ampsSinceNanos() > pace.settlingNanos();
        if (!due || now.amps() < Envelope.LEAST_ORDERED_A || !view.valid(current)) {
            return Breach.NONE;
        }
        boolean pauses = pace.pauseNanos() > 0 && view.nanos() - view.memory().past().flowedNanos() <= pace.pauseNanos();
        if (pauses) {
            return Breach.NONE;
        }
        double amps = view.value(current) * now.way().sign();
        double limit = pace.leastShare() * now.amps();
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

    /** Polls are older than the shunt's reading by up to a period: the hold bridges every step of the order. */
    private static Breach apart(View view) {
        Channel current = view.places().current;
        if (!view.at(Closing.CURRENT) || !view.valid(current)) {
            return Breach.NONE;
        }
        Channel said = view.places().ampsSaid(view.memory().inForce());
        if (said == null || !view.valid(said)) {
            return Breach.NONE;
        }
        double shunt = Math.abs(view.value(current));
        double device = Math.abs(view.value(said));
        double limit = APART_SHARE * Math.max(shunt, device) + APART_A + current.uncertainty(shunt) + said.uncertainty(device);
        return Math.abs(shunt - device) > limit
                ? new Breach(said.index(), device, device > shunt ? shunt + limit : shunt - limit) : Breach.NONE;
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
