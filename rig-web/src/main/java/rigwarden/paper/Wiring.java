package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rigwarden.rig.Device;
import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;

/** Every connection of a rig, as its file describes it, in the order in which it is wired. */
public final class Wiring {
    private final Rig rig;
    private final List<Connection> all = new ArrayList<>();

    private Wiring(Rig rig) {
        this.rig = rig;
    }

    /** All connections: power from B+ round to B−, then what measures, then the stop chain and the controller's lines. */
    public static List<Connection> of(Rig rig) {
        Wiring wiring = new Wiring(rig);
        wiring.power();
        wiring.all.addAll(SenseWiring.of(rig));
        wiring.all.addAll(StopWiring.of(rig));
        return List.copyOf(wiring.all);
    }

    private void power() {
        String cable = rated(PathPart.Kind.CABLE, "cable");
        for (int cell = 1; cell < rig.cells().series(); cell++) {
            add(stud(cell), "cell %d, − stud".formatted(cell + 1), rated(PathPart.Kind.BAR, "bar"), beside());
        }
        add("B+, which is " + stud(rig.cells().series()), "fuse", cable, "as short as it can be: up to the fuse nothing protects it");
        add("fuse", "K1", cable, rated(PathPart.Kind.FUSE, "fuse"));
        add("K1", "bus+", cable, rated(PathPart.Kind.CONTACTOR, "contactor") + "; must break it in both directions");
        add("fuse", "bus+, through Kp", "pre-charge, " + ohms(rig.busSide().prechargeOhms()), "resistor may get hot: on metal, away from cells");
        add("bus+", "bus−", "bleed, " + ohms(rig.busSide().bleedOhms()), "empties the bus; never disconnected");
        rig.devices().forEach(this::device);
        String protection = rig.protection().isPresent() ? "battery's protection" : "shunt";
        add("bus−", protection, cable, "");
        if (rig.protection().isPresent()) {
            add(protection, "shunt", cable, "shunt on the battery's side, so that it keeps its reference when the protection opens");
        }
        add("shunt", "B−, which is cell 1, − stud", cable, rated(PathPart.Kind.SHUNT, "shunt") + "; the one measurement ground");
    }

    private void device(Device device) {
        String ways = device.charges() ? "source" : "sink";
        String own = rig.path().stream().filter(p -> p.device().equals(device.name()) && p.kind() != PathPart.Kind.RELAY)
                .map(p -> p.name() + ", " + amps(p.ratedAmps())).findFirst().orElse("cable for " + amps(Math.ceil(device.maxAmps())));
        var contact = rig.path().stream().filter(p -> p.device().equals(device.name()) && p.kind() == PathPart.Kind.RELAY).findFirst();
        contact.ifPresent(relay -> add("bus+", relay.name(), own, "second element of this " + ways + ", " + amps(relay.ratedAmps())));
        add(contact.map(PathPart::name).orElse("bus+"), device.name() + ", plus", own, second(device, contact.isPresent()));
        add(device.name() + ", minus", "bus−", own, "");
    }

    private static String second(Device device, boolean contact) {
        if (contact) {
            return "";
        }
        return switch (device) {
            case Device.PlainCharger _ -> "its relay stands in its mains supply: work for a licensed person";
            case Device.Inverter _ -> "its relay works its remote input";
            case Device.Programmed _ -> "its relay works its output's enable";
        };
    }

    private String beside() {
        return rig.cells().parallel() > 1 ? rig.cells().parallel() + " cells side by side in each place" : "";
    }

    private String rated(PathPart.Kind kind, String otherwise) {
        return rig.path().stream().filter(part -> part.kind() == kind && part.common()).findFirst()
                .map(part -> part.name() + ", " + amps(part.ratedAmps())).orElse(otherwise + " for the fuse's rating");
    }

    static String stud(int cell) {
        return "cell " + cell + ", + stud";
    }

    static String amps(double amps) {
        return plain(amps) + " A";
    }

    static String ohms(double ohms) {
        return plain(ohms) + " Ω";
    }

    static String plain(double value) {
        return value == Math.rint(value) ? String.format(Locale.ROOT, "%.0f", value) : String.format(Locale.ROOT, "%.3g", value);
    }

    private void add(String from, String to, String conductor, String note) {
        all.add(new Connection("P" + (all.size() + 1), from, to, conductor, note));
    }
}
