package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Device;
import rigwarden.rig.Panel;
import rigwarden.rig.Rig;

/** The stop chain of hardware/guide.md and the controller's lines. */
final class StopWiring {
    private static final String COIL = "0.5 mm²";

    private final Rig rig;
    private final List<Connection> all = new ArrayList<>();
    private int chain;

    private StopWiring(Rig rig) {
        this.rig = rig;
    }

    static List<Connection> of(Rig rig) {
        StopWiring wiring = new StopWiring(rig);
        wiring.chain();
        wiring.lines();
        return wiring.all;
    }

    /** Contacts of the loop as a person says them. */
    static List<String> contacts(Rig rig) {
        return rig.guards().loopContacts().stream().map(name -> name.replace('_', ' ')).toList();
    }

    private void chain() {
        String from = "24 V, its own fuse";
        for (String contact : contacts(rig)) {
            stop(from, contact, "closed at rest; carries the current of all coils");
            from = contact;
        }
        stop(from, "KL, coil and both contacts", "latches; the reset button stands beside its own contact");
        stop("KL, second contact", "KH, working contact", "KHa and KHb, their contacts in series; no capacitor behind KH");
        stop("KH, working contact", "K1, coil", "a diode before it, diode and zener across it");
        stop("KH, working contact", "Kp, coil", "likewise");
        rig.devices().forEach(device -> stop("KH, working contact", device.name() + ", coil of its relay", "likewise"));
        stop("9 V battery, arm switch", "KH, contact closed at rest, sounder", "contacts of KHa and KHb side by side; independent of all else");
    }

    private void lines() {
        Panel panel = rig.panel();
        line(panel.contactor(), true, "K1, coil transistor");
        line(panel.precharge(), true, "Kp, coil transistor");
        line(panel.heartbeat(), true, "heartbeat stage");
        line(panel.sounder(), true, "sounder");
        rig.devices().forEach(device -> line(device.relay(), true, device.name() + ", " + relay(device)));
        line(panel.loop(), false, "loop behind KL");
        line(panel.coilFeed(), false, "coil feed behind KH");
        line(panel.feedback(), false, "K1, mirror contact");
        line(panel.arm(), false, "arm key");
    }

    private static String relay(Device device) {
        return switch (device) {
            case Device.PlainCharger _ -> "relay of its mains";
            case Device.Inverter _ -> "relay of its remote input";
            case Device.Programmed _ -> "coil transistor of its contact";
        };
    }

    private void stop(String from, String to, String note) {
        chain++;
        all.add(new Connection("C" + chain, from, to, COIL, note));
    }

    private void line(int number, boolean output, String to) {
        String controller = rig.wires().expander(number).map(own -> "expander " + own.name() + ", " + pin(number - own.firstLine()))
                .orElse("controller, line " + number);
        all.add(new Connection("L" + number, output ? controller : to, output ? to : controller, "through an optocoupler",
                output ? "pulled low in the box" : ""));
    }

    private static String pin(int place) {
        return (place < 8 ? "GPA" : "GPB") + place % 8;
    }
}
