package rigwarden.rigfile;

import java.util.HashMap;
import java.util.Map;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Instrument;
import rigwarden.rig.PathPart;
import rigwarden.rig.RegisterMap;
import rigwarden.rig.Rig;

/** Whether sources and sinks can do on this rig what they are there for, each by itself. */
final class DeviceChecks {
    /** Open-circuit voltages of LFP near full and in the middle, V: common practice (no source). */
    private static final double FULL_V = 3.4;
    private static final double MIDDLE_V = 3.2;
    private static final double LEAST_FARADS = 1e-3;
    /** Letters of one poll and its answer, at ten bits each. */
    private static final double POLL_BITS = 100 * 10;

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;
    private final int series;

    DeviceChecks(Page page, Sketch sketch) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
        this.series = rig.cells().series();
    }

    void check() {
        Map<String, String> ports = new HashMap<>();
        for (Device device : rig.devices()) {
            if (!device.stops().contains("contactor")) {
                page.refuse(RefusalKind.STOPS_WITHOUT_CONTACTOR, sketch.key(device, "stops"),
                        String.join(", ", device.stops()), "a contactor among them",
                        "only an open contactor parts the cells from everything", "Name it.");
            }
            switch (device) {
                case Device.Programmed p -> programmed(p, ports);
                case Device.PlainCharger c -> charger(c);
                case Device.Inverter i -> inverter(i);
            }
        }
    }

    private void programmed(Device.Programmed device, Map<String, String> ports) {
        Instrument instrument = device.instrument();
        String first = ports.putIfAbsent(instrument.port(), device.name());
        if (first != null) {
            page.refuse(RefusalKind.SAME_PORT, sketch.key(device, "port"), "a port of its own", first + " is on it",
                    "Give each instrument its own line.");
        }
        if (!instrument.port().startsWith("/dev/")) {
            page.refuse(RefusalKind.PORT_NO_DEVICE, sketch.key(device, "port"), "a device file, /dev/…",
                    "orders go out over a serial line", "Use the name that the udev rule gives it.");
        }
        if (instrument.speech() instanceof RegisterMap map) {
            new RegisterChecks(page, sketch, device, map).check();
        } else if (POLL_BITS / instrument.baud() > instrument.pollNanos() / 2.5e9) {
            page.refuse(RefusalKind.BAUD_SLOW, sketch.key(device, "baud"), instrument.baud() + " bit/s",
                    "at least " + Figures.of(Math.ceil(POLL_BITS * 2.5e9 / instrument.pollNanos())) + " bit/s",
                    "an answer must be there in two fifths of a poll", "Set both ends faster, or poll more slowly.");
        }
        if (device.stops().contains("relay") && rig.path().stream().noneMatch(p -> p.device().equals(device.name())
                && p.kind() == PathPart.Kind.RELAY)) {
            page.refuse(RefusalKind.RELAY_UNRATED, sketch.key(device, "stops"), "relay", "a relay that the path describes",
                    "its contact must break this current at this voltage", "Add a [[path]] table with device = \""
                            + device.name() + "\", or name another stop.");
        }
        double volts = instrument.maxVolts();
        if (device.charges() && volts < series * FULL_V) {
            page.refuse(RefusalKind.SOURCE_LOW, sketch.key(device, "max_v"), Figures.of(volts, "V"),
                    "at least " + Figures.of(series * FULL_V, "V"), "it could never fill the cells", "");
        }
        if (!device.charges() && volts < series * Envelope.HIGH_TRIP_V) {
            page.refuse(RefusalKind.SINK_LOW, sketch.key(device, "max_v"), Figures.of(volts, "V"),
                    "at least " + Figures.of(series * Envelope.HIGH_TRIP_V, "V"), "full cells would be too much for it",
                    "Use a sink for a higher voltage.");
        }
    }

    private void charger(Device.PlainCharger charger) {
        double most = rig.cells().chargeAmps();
        if (charger.maxAmps() > most) {
            page.refuse(RefusalKind.CHARGER_STRONG, sketch.key(charger, "amps"), Figures.of(charger.maxAmps(), "A"),
                    "at most " + Figures.of(most, "A"), "no set point can lower it, and cells bear no more",
                    "Use a smaller charger.");
        }
        if (charger.finishAmps() >= charger.amps()) {
            page.refuse(RefusalKind.FINISH_HIGH, sketch.key(charger, "finish_a"),
                    "less than " + Figures.of(charger.amps(), "A"), "it would be finished as it begins", "");
        }
        if (charger.floats() && charger.floatVolts() >= charger.volts()) {
            page.refuse(RefusalKind.FLOAT_HIGH, sketch.key(charger, "float_v"),
                    "less than " + Figures.of(charger.volts(), "V"), "a charger floats below its charge voltage", "");
        }
        if (charger.volts() < series * FULL_V) {
            page.refuse(RefusalKind.SOURCE_LOW, sketch.key(charger, "volts"), Figures.of(charger.volts(), "V"),
                    "at least " + Figures.of(series * FULL_V, "V"), "it could never fill the cells",
                    "Is it a charger for fewer cells?");
        }
    }

    private void inverter(Device.Inverter inverter) {
        double lowest = Math.max(inverter.quitVolts(), inverter.lowestVolts());
        if (lowest * lowest < 4 * inverter.leadOhms() * inverter.watts() / inverter.efficiency()) {
            page.refuse(RefusalKind.WATTS_BEYOND, sketch.key(inverter, "watts"), Figures.of(inverter.watts(), "W"),
                    "what its leads can carry at " + Figures.of(lowest, "V"),
                    "below that voltage no current gives this power", "Use a smaller heater or thicker leads.");
        } else if (inverter.maxAmps() > rig.weakest(inverter).continuousAmps()) {
            page.refuse(RefusalKind.INVERTER_STRONG, sketch.key(inverter, "watts"),
                    Figures.of(inverter.maxAmps(), "A") + " at " + Figures.of(lowest, "V"),
                    "at most " + Figures.of(rig.weakest(inverter).continuousAmps(), "A") + ", which "
                            + rig.weakest(inverter).name() + " may carry",
                    "its current rises as the voltage falls, and nothing lowers it", "Use a smaller heater.");
        }
        if (inverter.quitVolts() < series * Envelope.LOW_TRIP_V) {
            page.refuse(RefusalKind.QUIT_LATE, sketch.key(inverter, "quit_v"), Figures.of(inverter.quitVolts(), "V"),
                    "at least " + Figures.of(series * Envelope.LOW_TRIP_V, "V") + " to be of use as a limit",
                    "it goes on where the warden has tripped", "Raise its own limit if it has one.");
        }
        if (inverter.quitVolts() > series * MIDDLE_V) {
            page.refuse(RefusalKind.QUIT_EARLY, sketch.key(inverter, "quit_v"), Figures.of(inverter.quitVolts(), "V"),
                    "at most " + Figures.of(series * MIDDLE_V, "V"), "it would quit with the cells half full",
                    "Is it an inverter for more cells?");
        }
        if (rig.busSide().farads() < LEAST_FARADS) {
            page.refuse(RefusalKind.FARADS_FORGOTTEN, "bus_side.farads", Figures.of(rig.busSide().farads(), "F"),
                    "at least " + Figures.of(LEAST_FARADS, "F") + " with an inverter",
                    "its capacitors are on the bus whether it works or not", "Measure them, or read its sheet.");
        }
        if (!rig.guards().loopContacts().contains("heater_cutout")) {
            page.refuse(RefusalKind.HEATER_UNGUARDED, "guards.loop_contacts",
                    String.join(", ", rig.guards().loopContacts()), "heater_cutout among them",
                    "a heater that boils dry must stop with the computer dead", "Wire its cut-out into the loop.");
        }
    }
}
