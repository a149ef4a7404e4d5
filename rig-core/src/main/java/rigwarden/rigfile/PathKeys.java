package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rigwarden.rig.BusSide;
import rigwarden.rig.Guards;
import rigwarden.rig.PathPart;
import rigwarden.rig.Protection;
import rigwarden.rig.Trips;

/** Reads the current path, what is behind the contactor, and the guards. */
final class PathKeys {
    static final List<String> CONTACTS =
            List.of("emergency_stop", "thermal_cutout", "cell_window", "smoke", "door", "heater_cutout");
    private static final List<String> KINDS =
            Arrays.stream(PathPart.Kind.values()).map(kind -> kind.name().toLowerCase(Locale.ROOT)).toList();
    private static final String WEAKEST = "the weakest part governs the current";

    private final RigKeys rig;
    private final List<PathPart> parts = new ArrayList<>();
    private double prechargeJoules;
    private double bleedWatts;
    private final List<String> oneWayBreakers = new ArrayList<>();

    PathKeys(RigKeys rig) {
        this.rig = rig;
    }

    void parts(Keys root) {
        for (Keys keys : root.tables("path", RefusalKind.MISSING_KEY, WEAKEST)) {
            String name = rig.name(keys);
            PathPart.Kind kind = PathPart.Kind.valueOf(keys.word("kind", KINDS, WEAKEST).toUpperCase(Locale.ROOT));
            double rated = keys.number("rated_a", RefusalKind.RATING_MISSING, "A", 0.1, 5000, WEAKEST);
            boolean breaks = breaks(kind);
            double amps = breaks ? keys.number("breaks_a", "A", 0.1, 200_000, "it must be able to end a fault") : 0;
            double volts = breaks ? keys.number("breaks_v", "V", 1, 2000, "a d.c. arc lives on voltage") : 0;
            if (kind == PathPart.Kind.CONTACTOR
                    && !keys.yesOrNo("both_directions", "some contactors break d.c. in one direction only")) {
                oneWayBreakers.add(name);
            }
            String device = keys.has("device") ? keys.text("device", "its current is its device's alone") : "";
            parts.add(new PathPart(name, kind, rated, amps, volts, device));
            keys.noOthers();
        }
    }

    private static boolean breaks(PathPart.Kind kind) {
        return switch (kind) {
            case FUSE, CONTACTOR, RELAY -> true;
            case SHUNT, CABLE, BAR, LUG, PLUG -> false;
        };
    }

    List<PathPart> parts() {
        return List.copyOf(parts);
    }

    double prechargeJoules() {
        return prechargeJoules;
    }

    double bleedWatts() {
        return bleedWatts;
    }

    List<String> oneWayBreakers() {
        return List.copyOf(oneWayBreakers);
    }

    BusSide busSide(Keys keys) {
        BusSide side = new BusSide(
                keys.number("precharge_ohms", RefusalKind.NO_PRECHARGE, "ohm", 0.01, 10_000,
                        "closing onto empty capacitors welds the contact"),
                keys.number("farads", "F", 1e-6, 10, "pre-charge and decay follow from it"),
                keys.number("bleed_ohms", "ohm", 0.1, 1e6, "a bus that stays charged hides a welded contact"),
                keys.number("decay_s", "s", 0.1, 600, "a welded contact is looked for after it"),
                keys.number("path_ohms", "ohm", 0.0005, 0.02, "what loses more than twice of it is a part that gets hot"));
        prechargeJoules = keys.number("precharge_joules", "J", 0.1, 100_000, "it takes the bus's filling in one blow");
        bleedWatts = keys.number("bleed_watts", "W", 0.1, 1000, "it is hot as long as the bus is full");
        keys.noOthers();
        return side;
    }

    Guards guards(Keys keys) {
        boolean window = keys.has("window_high_v") || keys.has("window_low_v");
        Guards guards = new Guards(
                keys.number("heartbeat_shortest_s", "s", 0.01, 60, "a few missed beats are tolerated"),
                keys.number("heartbeat_longest_s", "s", 0.01, 60, "a dead computer must let go soon"),
                keys.words("loop_contacts", CONTACTS, "the loop must work with the computer dead"),
                keys.yesOrNo("latching", "a cooled bimetal must not close the loop again"),
                window ? keys.number("window_high_v", "V", 3.65, 3.75, "beyond it a cell is in danger") : 0,
                window ? keys.number("window_low_v", "V", 2.30, 2.50, "below it a cell is in danger") : 0,
                keys.number("contact_lag_s", "s", 0.001, 0.5, "it is part of every rule's reaction time"),
                trips(keys));
        keys.noOthers();
        return guards;
    }

    /** Each may be left out; none may be moved outward. */
    private static Trips trips(Keys keys) {
        Trips widest = Trips.WIDEST;
        return new Trips(
                inward(keys, "cell_high_trip_v", "V", 3.55, widest.cellHighVolts(), true),
                inward(keys, "cell_low_trip_v", "V", widest.cellLowVolts(), 2.80, false),
                inward(keys, "charging_high_trip_c", "°C", 38, widest.chargingHighCelsius(), true),
                inward(keys, "charging_low_trip_c", "°C", widest.chargingLowCelsius(), 10, false),
                inward(keys, "discharging_high_trip_c", "°C", 40, widest.dischargingHighCelsius(), true),
                inward(keys, "discharging_low_trip_c", "°C", widest.dischargingLowCelsius(), 5, false),
                inward(keys, "joint_trip_c", "°C", 40, widest.jointCelsius(), true),
                inward(keys, "joint_over_room_trip_k", "K", 10, widest.jointOverRoomKelvin(), true),
                inward(keys, "joint_over_cell_trip_k", "K", 5, widest.jointOverCellKelvin(), true));
    }

    private static double inward(Keys keys, String key, String unit, double lowest, double highest, boolean upper) {
        return keys.has(key)
                ? keys.number(key, unit, lowest, highest, "a rig file may move a trip inward only")
                : upper ? highest : lowest;
    }

    /** The battery's own protection; a rig without the table has none. */
    Optional<Protection> protection(Keys root) {
        if (!root.has("protection")) {
            return Optional.empty();
        }
        Keys keys = rig.inner(root, "protection");
        Protection protection = new Protection(
                keys.number("high_v", "V", 3.3, 4.5, "it is compared with what trips before it"),
                keys.number("low_v", "V", 1.0, 3.0, "it is compared with what trips before it"),
                keys.number("tolerance_v", "V", 0, 0.2, "its limits hold for the true value too"),
                keys.number("delay_s", "s", 0, 60, "a slow one lets a cell go further"),
                keys.number("rated_a", "A", 1, 2000, WEAKEST),
                keys.yesOrNo("balances", "a balancer moves charge that the shunt does not see"));
        keys.noOthers();
        return Optional.of(protection);
    }
}
