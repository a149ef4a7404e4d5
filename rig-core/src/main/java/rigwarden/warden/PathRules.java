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
    /** A bus that still stands above this share of the pack, when it should have emptied, is held up by something. */
    private static final double ALIVE = 0.5;
    private static final double NO_LOAD_EXTRA_S = 10;
    /** What contacts lose besides, and the time between the readings of pack and bus, V (project's assumption). */
    private static final double LOST_V = 0.1;
    /** An inverter's current swings by as much as its mean, and its ripple stands nearly still in ten scans a second. */
    private static final double SWINGS = 2;

    private PathRules() {}

    static List<Rule> of(Rig rig) {
        List<Rule> rules = new ArrayList<>(List.of(Rules.trips(16, "current path lost",
                "The current stopped although it was ordered, the bus is no longer tied to the pack, and no cell was where "
                        + "the battery's protection opens.",
                Set.of(Role.CURRENT, Role.BUS_VOLTS, Role.PACK_VOLTS), "1 A; 0.5 % of the pack + uncertainties", 0,
                PathRules::lost)));
        long decay = Math.round(rig.busSide().decaySeconds() * 1e9);
        rules.add(Rules.weld(19, "bus alive although off",
                "After the bus should have emptied something holds it up that is not the pack: a source's relay did not open.",
                Set.of(Role.BUS_VOLTS, Role.PACK_VOLTS), "half the pack after the proved decay time", 0.3,
                view -> alive(view, decay)));
        rules.add(Rules.trips(57, "voltage lost on the way",
                "Between the pack's measuring point and the bus lies more voltage than the path's parts can lose: one of them gets hot, or one of the two readings is wrong.",
                Set.of(Role.CURRENT, Role.BUS_VOLTS, Role.PACK_VOLTS), "0.1 V + twice path_ohms × current + uncertainties, from 1 A", 0.3,
                PathRules::wasted));
        if (rig.devices(true).stream().anyMatch(Device::switched)) {
            rules.add(Rules.trips(17, "source voltage high",
                    "Before it meets a cell, a switched source shows more voltage than the cells may get.",
                    Set.of(Role.BUS_VOLTS), "series × 3.65 V − uncertainty", 0.2, PathRules::high));
            rules.add(Rules.trips(18, "source gives no voltage",
                    "A switched source that was switched on alone did not lift the bus to the pack's "
                            + "voltage and hold it there: it is dead, or its relay is.",
                    Set.of(Role.BUS_VOLTS), "start time + 10 s", 0, PathRules::dead));
        }
        return rules;
    }

    /** An open contactor, a dead coil supply and an open loop have rules of their own, which name them better. */
    private static Breach lost(View view) {
        Places places = view.places();
        InForce now = view.memory().inForce();
        boolean due = view.at(Closing.CURRENT) && now.amps() >= Envelope.LEAST_ORDERED_A
                && view.memory().past().flowedNanos() > now.pathSinceNanos();
        boolean named = view.off(places.feedback) || view.off(places.coilFeed) || view.off(places.loop);
        if (!due || named || !view.valid(places.current) || !view.valid(places.pack) || !view.valid(places.bus)) {
            return Breach.NONE;
        }
        double amps = view.value(places.current);
        if (Math.abs(amps) >= Envelope.NO_CURRENT_A || tied(view, places) || opened(view, places, now.way())) {
            return Breach.NONE;
        }
        boolean fresh = Math.abs(view.last(places.current, amps)) >= Envelope.NO_CURRENT_A;
        return (fresh ? moved(view, places) : untiedBefore(view, places))
                ? new Breach(places.current.index(), amps, Envelope.NO_CURRENT_A) : Breach.NONE;
    }

    /**
     * A bus that is where it was says that the current, which drops what lies between, goes on, and that its reading is false;
     * if that comes again in the next scan, the path is lost all the same.
     */
    private static boolean moved(View view, Places places) {
        double now = view.value(places.bus);
        return !Tied.tied(places.bus, view.last(places.bus, now), places.bus, now);
    }

    /** In a thermostat's pause no current is nothing new: there one false reading of the bus is not the path. */
    private static boolean untiedBefore(View view, Places places) {
        return !Tied.tied(places.pack, view.last(places.pack, view.value(places.pack)), places.bus,
                view.last(places.bus, view.value(places.bus)));
    }

    private static boolean tied(View view, Places places) {
        return Tied.tied(places.pack, view.value(places.pack), places.bus, view.value(places.bus));
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

    /** Probes follow with many seconds of lag; the voltage says at once that something on the way takes what the cells should get, or give. */
    private static Breach wasted(View view) {
        Places places = view.places();
        if (!view.at(Closing.CURRENT) || !view.valid(places.current) || !view.valid(places.pack) || !view.valid(places.bus)) {
            return Breach.NONE;
        }
        double amps = Math.abs(view.value(places.current));
        if (amps < Envelope.NO_CURRENT_A) {
            return Breach.NONE;
        }
        double pack = view.value(places.pack);
        double bus = view.value(places.bus);
        double limit = LOST_V + SWINGS * places.rig.busSide().pathOhms() * amps + places.pack.uncertainty(pack) + places.bus.uncertainty(bus);
        return Math.abs(bus - pack) > limit ? new Breach(places.bus.index(), bus - pack, limit) : Breach.NONE;
    }

    private static Breach high(View view) {
        Channel bus = view.places().bus;
        if (!view.at(Closing.NO_LOAD) || !view.valid(bus)) {
            return Breach.NONE;
        }
        double volts = view.value(bus);
        double most = view.places().mostVolts;
        return volts + bus.uncertainty(volts) > most ? new Breach(bus.index(), volts, most) : Breach.NONE;
    }

    private static Breach dead(View view) {
        Channel bus = view.places().bus;
        if (!view.at(Closing.NO_LOAD) || !view.valid(bus)) {
            return Breach.NONE;
        }
        Device source = view.places().device(view.memory().inForce());
        double limit = source.startSeconds() + NO_LOAD_EXTRA_S;
        double packVolts = view.valid(view.places().pack) ? view.value(view.places().pack) : 0;
        return view.stageNanos() * 1e-9 > limit ? new Breach(bus.index(), view.value(bus), packVolts) : Breach.NONE;
    }

    /** A bus at the pack's own voltage is a welded contact, which has a rule of its own. */
    private static Breach alive(View view, long decay) {
        Places places = view.places();
        if (view.energised() || view.stageNanos() <= decay || !view.valid(places.bus) || !view.valid(places.pack)
                || Sides.match(view.scan(), places.pack, places.bus)) {
            return Breach.NONE;
        }
        double volts = view.value(places.bus);
        double limit = ALIVE * Math.max(view.value(places.pack), Sides.LEAST_PACK_V);
        return volts > limit ? new Breach(places.bus.index(), volts, limit) : Breach.NONE;
    }
}
