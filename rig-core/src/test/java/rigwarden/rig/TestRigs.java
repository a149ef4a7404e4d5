package rigwarden.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Rigs built in code, for tests that need no file. */
public final class TestRigs {
    public static final long SCAN_NANOS = 100_000_000L;

    private static final List<String> STOPS = List.of("contactor", "relay");

    private TestRigs() {}

    /** One 105 Ah cell, two stud probes, source and sink. */
    public static Rig oneCell() {
        ShuntMonitor shunt = new ShuntMonitor(1, 0x40, 0.0005, 0.0025, 20e-6, 0.5e-6, 163.84);
        List<VoltageInput> inputs = List.of(
                new VoltageInput("cell_01_v", Role.CELL_VOLTS, 1, 1, 0x48, 0, 5.0, 1, 0, Calibration.NONE, SCAN_NANOS),
                new VoltageInput("bus_v", Role.BUS_VOLTS, 0, 1, 0x48, 1, 5.0, 1, 0, Calibration.NONE, SCAN_NANOS));
        List<Probe> probes = List.of(
                probe("cell_01_c", Role.BODY, 1, false, 0x60),
                probe("terminal_01p_c", Role.STUD, 1, true, 0x61),
                probe("terminal_01n_c", Role.STUD, 1, false, 0x62),
                probe("shunt_c", Role.SHUNT_BODY, 0, false, 0x63),
                probe("contactor_c", Role.CONTACTOR_BODY, 0, false, 0x64),
                probe("room_c", Role.ROOM, 0, false, 0x65));
        Instrument source = new Instrument("source", 115200, 60, 3.65, 0, 500_000_000L, 0.01, 0.01, Commands.SOURCE);
        Instrument sink = new Instrument("sink", 115200, 120, 60, 2.0, 500_000_000L, 0.01, 0.01, Commands.SINK);
        Guards guards = new Guards(0.6, 1.0, List.of("emergency_stop", "thermal_cutout"), true, 3.75, 2.30, 0.03);
        List<Device> devices = List.of(new Device.Programmed("source", true, 13, STOPS, source, true),
                new Device.Programmed("sink", false, 19, STOPS, sink, true));
        List<PathPart> path = List.of(
                new PathPart("fuse", PathPart.Kind.FUSE, 125, 20000, 60, ""),
                new PathPart("shunt", PathPart.Kind.SHUNT, 150, 0, 0, ""),
                new PathPart("contactor", PathPart.Kind.CONTACTOR, 200, 200, 60, ""));
        return new Rig("test bench", SCAN_NANOS, new Cells(1, 1, 105, 3.65, 2.5, 0.5, 1.0), path, Map.of(1, 400_000, 3, 100_000),
                shunt, inputs, probes, new Panel(5, 6, 26, 21, 16, 20, 12, 25), devices,
                new BusSide(1, 0.02, 47, 4, 0.003), guards, Optional.empty(),
                Channels.of(SCAN_NANOS, shunt, inputs, probes, devices), new Rehearsed(22, 0, 0, 0.004));
    }

    /** The same with other guards. */
    public static Rig guarded(Rig rig, Guards guards) {
        return new Rig(rig.name(), rig.scanNanos(), rig.cells(), rig.path(), rig.busHertz(), rig.shunt(), rig.inputs(), rig.probes(),
                rig.panel(), rig.devices(), rig.busSide(), guards, rig.protection(), rig.channels(), rig.rehearsed());
    }

    /** Eight cells with a plain charger, a programmable sink, an inverter with a thermostat, and a protection. */
    public static Rig eightCells() {
        ShuntMonitor shunt = new ShuntMonitor(1, 0x40, 0.0005, 0.0025, 20e-6, 0.5e-6, 163.84);
        Calibration calibration = new Calibration(1, 0, 0.0001, 0.0005, true);
        List<VoltageInput> inputs = new ArrayList<>();
        List<Probe> probes = new ArrayList<>();
        for (int cell = 1; cell <= 8; cell++) {
            int island = (cell - 1) / 4;
            int pin = (cell - 1) % 4;
            inputs.add(new VoltageInput(String.format(Locale.ROOT, "tap_%02d_v", cell), Role.TAP_VOLTS, cell, 10 + island,
                    0x48, pin, 5.0, pin + 1, 0.001, calibration, SCAN_NANOS));
            probes.add(probe(String.format(Locale.ROOT, "cell_%02d_c", cell), Role.BODY, cell, false, 0x60 + cell - 1));
            if (cell < 8) {
                probes.add(new Probe(String.format(Locale.ROOT, "bar_%02d_c", cell), Role.BAR, cell, false, 4,
                        0x60 + cell, 1.8, 8, 2 * SCAN_NANOS));
            }
        }
        inputs.add(new VoltageInput("bus_v", Role.BUS_VOLTS, 0, 1, 0x48, 0, 5.0, 10, 0.001, Calibration.NONE, SCAN_NANOS));
        probes.add(new Probe("terminal_01n_c", Role.STUD, 1, false, 4, 0x60, 1.8, 8, 2 * SCAN_NANOS));
        probes.add(new Probe("terminal_08p_c", Role.STUD, 8, true, 5, 0x60, 1.8, 8, 2 * SCAN_NANOS));
        probes.add(new Probe("shunt_c", Role.SHUNT_BODY, 0, false, 5, 0x61, 1.8, 8, 2 * SCAN_NANOS));
        probes.add(new Probe("contactor_c", Role.CONTACTOR_BODY, 0, false, 5, 0x62, 1.8, 8, 2 * SCAN_NANOS));
        probes.add(new Probe("room_c", Role.ROOM, 0, false, 5, 0x63, 1.8, 8, 2 * SCAN_NANOS));
        Instrument sink = new Instrument("sink", 115200, 20, 60, 12, 500_000_000L, 0.01, 0.01, Commands.SINK);
        List<Device> devices = List.of(
                new Device.PlainCharger("charger", 13, STOPS, 20, 0.05, 28.8, 0.01, 30, 2, false, 0),
                new Device.Programmed("sink", false, 19, STOPS, sink, true),
                new Device.Inverter("inverter", 22, STOPS, 1500, 0.9, 0.002, 21, 24.5, 20, 5, 60));
        List<PathPart> path = List.of(
                new PathPart("fuse", PathPart.Kind.FUSE, 125, 20000, 60, ""),
                new PathPart("shunt", PathPart.Kind.SHUNT, 150, 0, 0, ""),
                new PathPart("contactor", PathPart.Kind.CONTACTOR, 200, 200, 60, ""));
        return new Rig("test pack", SCAN_NANOS, new Cells(8, 1, 105, 3.65, 2.5, 0.5, 1.0), path,
                Map.of(1, 400_000, 10, 400_000, 11, 400_000, 3, 100_000, 4, 100_000, 5, 100_000), shunt, inputs, probes,
                new Panel(5, 6, 26, 21, 16, 20, 12, 25), devices, new BusSide(10, 0.03, 220, 25, 0.003),
                new Guards(0.6, 1.0, List.of("emergency_stop", "thermal_cutout"), true, 0, 0, 0.03),
                Optional.of(new Protection(3.65, 2.45, 0.025, 3, 100, false)),
                Channels.of(SCAN_NANOS, shunt, inputs, probes, devices), new Rehearsed(15, 0, 0.03, 0.004));
    }

    /** The same rig with a probe that a person carries, on a free address. */
    public static Rig withLoose(Rig rig) {
        List<Probe> probes = new ArrayList<>(rig.probes());
        probes.add(new Probe("loose_c", Role.LOOSE, 0, false, 5, 0x67, 1.8, 8, 2 * SCAN_NANOS));
        return new Rig(rig.name(), rig.scanNanos(), rig.cells(), rig.path(), rig.busHertz(), rig.shunt(), rig.inputs(), probes, rig.panel(),
                rig.devices(), rig.busSide(), rig.guards(), rig.protection(),
                Channels.of(rig.scanNanos(), rig.shunt(), rig.inputs(), probes, rig.devices()), rig.rehearsed());
    }

    /** The same rig with instruments that are never wrong, so that a limit stands where it is written. */
    public static Rig exact(Rig rig) {
        return rig.with(rig.channels().stream().map(c -> new Channel(c.index(), c.name(), c.role(), c.cell(), c.periodNanos(),
                c.scale(), c.shift(), 0, 0, c.lowest(), c.highest(), c.lagSeconds())).toList());
    }

    private static Probe probe(String name, Role place, int cell, boolean positive, int address) {
        return new Probe(name, place, cell, positive, 3, address, 1.8, 8, 2 * SCAN_NANOS);
    }
}
