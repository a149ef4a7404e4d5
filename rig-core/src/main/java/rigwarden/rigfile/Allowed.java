package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;

/**
 * One row of the envelope in force, as readings on this rig: uncertainties are already taken off.
 *
 * @param quantity what is limited
 * @param programme what a programme may use, with unit
 * @param trips the reading at which the warden trips, with unit
 * @param mustLast how long it must last, s
 */
public record Allowed(String quantity, String programme, String trips, double mustLast) {

    static List<Allowed> of(Rig rig) {
        double high = TapLimit.uncertainty(rig, Envelope.CEILING_V);
        double low = TapLimit.uncertainty(rig, Envelope.CUT_OFF_V);
        double body = offset(rig, Role.BODY);
        double warmed = rig.channels().stream().filter(c -> c.role().warmsByCurrent()).mapToDouble(Channel::offsetU)
                .max().orElse(0);
        Trips trips = rig.guards().trips();
        List<Rule> rules = Rules.of(rig);
        List<Allowed> rows = new ArrayList<>();
        rows.add(new Allowed("cell high",
                "set up to " + Figures.of(Math.min(Envelope.CEILING_V, rig.cells().ceilingVolts()) - high, "V"),
                "from " + Figures.of(trips.cellHighVolts() - high, "V"), hold(rules, 1)));
        rows.add(new Allowed("cell low, discharge and rest",
                "cut-off from " + Figures.of(Math.max(Envelope.CUT_OFF_V, rig.cells().cutOffVolts()), "V"),
                "down to " + Figures.of(trips.cellLowVolts() + low, "V"), hold(rules, 2)));
        rows.add(new Allowed("cell low, charging", "—",
                "below " + Figures.of(Envelope.LOW_CHARGING_TRIP_V + low, "V"), hold(rules, 3)));
        for (Device device : rig.devices()) {
            Governing governing = Governing.of(rig, device);
            String name = device.charges() ? "charge current" : "discharge current";
            rows.add(new Allowed(name, "up to " + Figures.of(governing.amps(), "A") + " (" + governing.part() + ")",
                    over(rig, governing, 1.1), hold(rules, 11)));
            rows.add(new Allowed(name, "", over(rig, governing, 1.5), hold(rules, 12)));
        }
        rows.add(new Allowed("cell temperature, charging",
                "enters " + Figures.range(Envelope.CHARGING_ENTRY_LOW_C, Envelope.CHARGING_ENTRY_HIGH_C, "°C"),
                outside(trips.chargingLowCelsius(), trips.chargingHighCelsius(), body),
                hold(rules, 21)));
        rows.add(new Allowed("cell temperature, discharging",
                "enters " + Figures.range(Envelope.DISCHARGING_ENTRY_LOW_C, Envelope.DISCHARGING_ENTRY_HIGH_C, "°C"),
                outside(trips.dischargingLowCelsius(), trips.dischargingHighCelsius(), body),
                hold(rules, 21)));
        rows.add(new Allowed("terminal, shunt, contactor", "—",
                "above " + Figures.of(trips.jointCelsius() - warmed, "°C"), hold(rules, 23)));
        rows.add(new Allowed("the same over the room", "—",
                "above " + Figures.of(trips.jointOverRoomKelvin() - Math.hypot(warmed, rig.channel(Role.ROOM).offsetU()), "K"), hold(rules, 24)));
        rows.add(new Allowed("terminal over its cell", "—",
                "above " + Figures.of(trips.jointOverCellKelvin() - Math.hypot(warmed, body), "K"), hold(rules, 25)));
        rows.add(new Allowed("terminal's rise, first 5 min", "—",
                "above " + Figures.of(Envelope.TERMINAL_EARLY_K_PER_MIN, "K/min"), hold(rules, 26)));
        rows.add(new Allowed("terminal's rise, later", "—",
                "above " + Figures.of(Envelope.TERMINAL_LATE_K_PER_MIN, "K/min over two minutes"), hold(rules, 27)));
        return List.copyOf(rows);
    }

    private static String outside(double lowest, double highest, double u) {
        return "outside " + Figures.range(lowest + u, highest - u, "°C");
    }

    private static String over(Rig rig, Governing governing, double factor) {
        double amps = factor * governing.amps();
        double margin = Envelope.NO_CURRENT_A + rig.channel(Role.CURRENT).uncertainty(amps);
        return "above " + Figures.of(100 * factor, "%") + " of the order + " + Figures.of(margin, "A");
    }

    private static double offset(Rig rig, Role role) {
        return rig.channels(role).stream().mapToDouble(Channel::offsetU).max().orElse(0);
    }

    private static double hold(List<Rule> rules, int number) {
        return rules.stream().filter(rule -> rule.number() == number).mapToDouble(rule -> rule.holdNanos() * 1e-9)
                .findFirst().orElseThrow();
    }
}
