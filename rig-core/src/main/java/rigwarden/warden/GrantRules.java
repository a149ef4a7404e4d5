package rigwarden.warden;

import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Role;

/** What a wish must keep to. A machine that wishes otherwise has a defect, and a defect is a trip. */
final class GrantRules {
    private static final double ROUNDING = 1 + 1e-9;
    /** One element stands alone against the current no longer than a proof needs. */
    private static final long ALONE_NANOS = 3_000_000_000L;

    static final Rule BEYOND_CEILING = rule(61, "wish beyond ceiling",
            "The run machine wished for more current than this scan allows, or for more voltage than the cells may get.");
    static final Rule OUT_OF_ORDER = rule(62, "wish out of order",
            "The run machine wished for a stage that may not follow, or a way whose contactor is not yet open.");
    static final Rule NOT_STARTED = rule(63, "wish without start",
            "The run machine wished for energy without a start that was given with the arm input on.");

    static final List<Rule> ALL = List.of(BEYOND_CEILING, OUT_OF_ORDER, NOT_STARTED);

    private final Places places;

    GrantRules(Places places) {
        this.places = places;
    }

    private static Rule rule(int number, String name, String sentence) {
        return new Rule(number, name, sentence, Set.of(Role.CURRENT), "any", 0, Severity.TRIPS, Clearing.QUIET,
                _ -> Breach.NONE);
    }

    Granted grant(Guard guard, Lease lease, Scan scan, Wish.Path wish) {
        Memory memory = guard.memory();
        double ceiling = Math.min(lease.ceilingAmps(wish.way()), places.deviceAmps(wish));
        if (memory.started() == Started.NOT) {
            return tripped(NOT_STARTED, guard, scan, places.current, wish.set().amps(), 0);
        }
        if (wish.set().amps() > ceiling * ROUNDING) {
            return tripped(BEYOND_CEILING, guard, scan, places.current, wish.set().amps(), ceiling);
        }
        if (wish.way() == Way.CHARGE && wish.set().volts() > places.mostVolts * ROUNDING) {
            return tripped(BEYOND_CEILING, guard, scan, places.pack, wish.set().volts(), places.mostVolts);
        }
        if (!mayFollow(memory.inForce(), lease, scan, wish) || lease.scan() != scan.number() || !lease.spend()) {
            return tripped(OUT_OF_ORDER, guard, scan, places.current, wish.set().amps(), ceiling);
        }
        return new Granted(new Orders.Energised(lease, wish.way(), wish.through(), wish.stage(), wish.set()), guard);
    }

    private boolean mayFollow(InForce inForce, Lease lease, Scan scan, Wish.Path wish) {
        boolean works = switch (wish.stage()) {
            case CURRENT, RELAY_ALONE, CONTACTOR_ALONE -> true;
            case NO_LOAD, PRECHARGE, CONTACT, SILENCE -> false;
        };
        if (!works && !wish.set().equals(Setpoint.NONE)) {
            return false;
        }
        if (!inForce.energised()) {
            boolean first = wish.stage() == Closing.PRECHARGE || wish.stage() == Closing.NO_LOAD && places.hasNoLoad(wish);
            return first && lease.steady() && roomSeen(scan) && isOff(scan, places.feedback) && outputsOff(scan) && noCurrent(scan)
                    && Sides.below(scan, places.pack, places.bus);
        }
        if (wish.way() != inForce.way() || wish.through() != inForce.through()) {
            return false;
        }
        return switch (wish.stage()) {
            case NO_LOAD -> inForce.stage() == Closing.NO_LOAD;
            case PRECHARGE -> inForce.stage() == Closing.PRECHARGE;
            case CONTACT -> inForce.stage() == Closing.CONTACT
                    || inForce.stage() == Closing.PRECHARGE && lease.steady() && isOff(scan, places.feedback)
                            && busMatches(scan);
            case SILENCE -> inForce.stage() == Closing.CONTACT || inForce.stage() == Closing.SILENCE;
            case CURRENT -> inForce.stage() == Closing.CURRENT
                    || inForce.stage() == Closing.CONTACT && isOn(scan, places.feedback);
            case RELAY_ALONE, CONTACTOR_ALONE -> inForce.stage() == Closing.CURRENT
                    || inForce.stage() == wish.stage() && scan.nanos() - inForce.sinceNanos() < ALONE_NANOS;
        };
    }

    /** A path's parts are judged against the room as it was when the path was closed. */
    private boolean roomSeen(Scan scan) {
        return scan.readings().get(places.room.index()) instanceof Reading.Valid;
    }

    private boolean busMatches(Scan scan) {
        return Sides.match(scan, places.pack, places.bus);
    }

    private boolean outputsOff(Scan scan) {
        for (Channel output : places.outputs) {
            if (!isOff(scan, output)) {
                return false;
            }
        }
        return true;
    }

    private boolean noCurrent(Scan scan) {
        return scan.readings().get(places.current.index()) instanceof Reading.Valid valid
                && Math.abs(valid.value())
                        <= Envelope.NO_CURRENT_A + places.current.uncertainty(valid.value());
    }

    private static boolean isOff(Scan scan, Channel channel) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid valid && valid.value() <= 0.5;
    }

    private static boolean isOn(Scan scan, Channel channel) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid valid && valid.value() > 0.5;
    }

    private Granted tripped(Rule rule, Guard guard, Scan scan, Channel where, double value, double limit) {
        Trip trip = new Trip(rule, where, value, limit, scan.nanos(), scan.number());
        Memory ended = guard.memory().startedAs(Started.NOT, scan.nanos());
        return new Granted(Orders.OFF_NOW, new Guard.Tripped(trip, List.of(), ended));
    }
}
