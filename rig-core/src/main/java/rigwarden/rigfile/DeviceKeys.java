package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Cells;
import rigwarden.rig.Commands;
import rigwarden.rig.Device;
import rigwarden.rig.Instrument;
import rigwarden.rig.Speech;

/** Reads sources and sinks: those that take orders, and those that do as they like. */
final class DeviceKeys {
    private static final List<String> SOURCES = List.of("programmable", "charger");
    private static final List<String> SINKS = List.of("programmable", "inverter");
    private static final String KIND = "a rig must know what takes orders and what does as it likes";
    private static final String STOPS = "each direction of energy needs its ways to be stopped";
    private static final double HUNDRED = 100;

    private final RigKeys rig;
    private final Cells cells;
    private final List<Device> devices = new ArrayList<>();

    DeviceKeys(RigKeys rig, Cells cells) {
        this.rig = rig;
        this.cells = cells;
    }

    List<Device> devices(Keys root) {
        for (Keys keys : root.tables("source", RefusalKind.MISSING_KEY, "cells must be charged by something")) {
            devices.add(keys.word("kind", SOURCES, KIND).equals("charger") ? charger(keys) : programmed(keys, true));
            keys.noOthers();
        }
        for (Keys keys : root.tables("sink", RefusalKind.MISSING_KEY, "cells must be discharged by something")) {
            devices.add(keys.word("kind", SINKS, KIND).equals("inverter") ? inverter(keys) : programmed(keys, false));
            keys.noOthers();
        }
        return List.copyOf(devices);
    }

    private static int relay(Keys keys) {
        return RigKeys.line(keys, "relay");
    }

    private List<String> stops(Keys keys) {
        List<String> stops = keys.texts("stops", STOPS);
        if (stops.isEmpty() && keys.good("stops")) {
            keys.page().refuse(RefusalKind.MISSING_KEY, keys.full("stops"), "an empty list",
                    "contactor, relay", STOPS,
                    "Name the elements that stop it.");
        }
        return stops;
    }

    private Device programmed(Keys keys, boolean charges) {
        return new Device.Programmed(rig.name(keys), charges, relay(keys), stops(keys), instrument(keys, charges),
                keys.yesOrNo("limit_read_back", "without a hardware window it is the first layer"));
    }

    private static Instrument instrument(Keys keys, boolean source) {
        return new Instrument(
                keys.text("port", "orders go out over it"),
                keys.whole("baud", "bit/s", 1200, 4_000_000, "serial ports know no others"),
                keys.number("max_a", "A", 0.1, 2000, "it may be what governs the current"),
                keys.number("max_v", "V", 0.5, 400, "it is compared with what the cells may get"),
                keys.number("min_v", "V", 0, 400, "a test ends where it gives up"),
                keys.whole("poll_ms", "ms", 100, 2000, "an answer older than 2.5 polls trips") * RigKeys.MILLI,
                keys.number("amps_u_percent", "%", 0, 20, "its figure is a second opinion on the shunt") / HUNDRED,
                keys.number("volts_u_percent", "%", 0, 20, "its figure is a second opinion on the taps") / HUNDRED,
                speech(keys, source));
    }

    private static Speech speech(Keys keys, boolean source) {
        boolean registers = keys.has("modbus");
        Commands words = CommandKeys.commands(keys, source);
        if (registers && keys.has("commands")) {
            keys.page().refuse(RefusalKind.TWO_SPEECHES, keys.full("commands"), "commands beside a register map",
                    "one of the two", "an instrument speaks in words or in registers, not in both",
                    "Take out the one that it does not understand.");
        }
        return registers ? RegisterKeys.map(keys, source) : words;
    }

    private Device charger(Keys keys) {
        boolean floats = keys.yesOrNo("floats", "a charger that floats never lets the cells rest");
        return new Device.PlainCharger(rig.name(keys), relay(keys), stops(keys),
                keys.number("amps", "A", 0.1, 500, "no set point can lower it"),
                keys.number("amps_percent", "%", 0, 20, "its highest current counts") / HUNDRED,
                keys.number("volts", "V", 1, 70, "it is compared with what the cells may get"),
                keys.number("volts_percent", "%", 0, 10, "its highest voltage counts") / HUNDRED,
                keys.number("start_s", "s", 0, 300, "a soft start looks like a charger that is dead"),
                keys.number("finish_a", "A", 0, 100, "below it the charger ends by itself"),
                floats,
                floats ? keys.number("float_v", "V", 1, 70, "it goes on at this voltage") : 0);
    }

    private Device inverter(Keys keys) {
        return new Device.Inverter(rig.name(keys), relay(keys), stops(keys),
                keys.number("watts", "W", 1, 20_000, "its current rises as the voltage falls"),
                keys.number("efficiency", "", 0.5, 1, "the cells give more than the heater gets"),
                keys.number("lead_ohms", "ohm", 0, 0.1, "its own terminals see less than the bus"),
                keys.number("quit_v", "V", 1, 70, "it ends a discharge when it likes"),
                keys.number("restart_v", "V", 1, 70, "it would start again when the cells rebound"),
                cells.series() * cells.cutOffVolts(),
                keys.number("start_s", "s", 0, 60, "a slow start looks like an inverter that is dead"),
                keys.number("pause_s", "s", 0, 600, "a thermostat's pause looks like an inverter that quit"));
    }
}
