package rigwarden.warden;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Protection;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** A current path that is lost, and a switched source before it meets a cell. */
final class PathRules {
    private static final double LEAST_ORDERED_A = 2;
    /** Bus and pack further apart than this share, uncertainties added, are not tied together. */
    private static final double APART = 0.02;
    private static final double NO_LOAD_EXTRA_S = 10;

    private PathRules() {}

    static List<Rule> of(Rig rig) {
        List<Rule> rules = new ArrayList<>(List.of(Rules.trips(16, "current path lost",
                "The current stopped although it was ordered, the bus is no longer tied to the pack, and no cell was where "
                        + "the battery's protection opens.",
                Set.of(Role.CURRENT, Role.BUS_VOLTS, Role.PACK_VOLTS), "1 A; 2 % of the pack + uncertainty", 0,
                PathRules::lost)));
        if (rig.devices(true).stream().anyMatch(Device::switched)) {
            double most = rig.cells().series() * Envelope.CEILING_V;
            rules.add(Rules.trips(17, "source voltage high",
                    "Before it meets a cell, a switched source shows more voltage than the cells may get.",
                    Set.of(Role.BUS_VOLTS), "series × 3.65 V − uncertainty", 0.2, view -> high(view, most)));
            rules.add(Rules.trips(18, "source gives no voltage",
                    "A switched source that was switched on alone did not lift the bus: it is dead, or its relay is.",
                    Set.of(Role.BUS_VOLTS), "start time + 10 s", 0, PathRules::dead));
        }
        return rules;
    }

    /** An open contactor, a dead coil supply and an open loop have rules of their own, which name them better. */
    private static Breach lost(View view) {
        Places places = view.places();
        InForce now = view.memory().inForce();
        boolean due = view.at(Closing.CURRENT) && now.amps() >= LEAST_ORDERED_A
                && view.memory().past().flowedNanos() > now.pathSinceNanos();
        boolean named = view.off(places.feedback) || view.off(places.coilFeed) || view.off(places.loop);
        if (!due || named || !view.valid(places.current) || !view.valid(places.pack) || !view.valid(places.bus)) {
            return Breach.NONE;
        }
        double amps = view.value(places.current);
        if (Math.abs(amps) >= Envelope.NO_CURRENT_A || tied(view, places) || opened(view, places, now.way())) {
            return Breach.NONE;
        }
        return new Breach(places.current.index(), amps, Envelope.NO_CURRENT_A);
    }

    private static boolean tied(View view, Places places) {
        return Tied.tied(places.pack, view.value(places.pack), places.bus, view.value(places.bus), APART);
    }

    /** Whether a cell was, within its uncertainty, where the battery's protection stops this way. */
    private static boolean opened(View view, Places places, Way way) {
        if (places.rig.protection().isEmpty()) {
            return false;
        }
        Protection protection = places.rig.protection().get();
        for (Channel cell : places.cells) {
            double volts = view.memory().past().earlier(cell, 0);
            if (volts > 0 && Tied.meets(protection, cell, volts, way)) {
                return true;
            }
        }
        return false;
    }

    private static Breach high(View view, double most) {
        Channel bus = view.places().bus;
        if (!view.at(Closing.NO_LOAD) || !view.valid(bus)) {
            return Breach.NONE;
        }
        double volts = view.value(bus);
        return volts + bus.uncertainty(volts) > most ? new Breach(bus.index(), volts, most) : Breach.NONE;
    }

    private static Breach dead(View view) {
        Channel bus = view.places().bus;
        if (!view.at(Closing.NO_LOAD) || !view.valid(bus)) {
            return Breach.NONE;
        }
        Device source = view.places().device(view.memory().inForce());
        double limit = source.startSeconds() + NO_LOAD_EXTRA_S;
        return view.stageNanos() * 1e-9 > limit ? new Breach(bus.index(), view.value(bus), 0) : Breach.NONE;
    }
}
