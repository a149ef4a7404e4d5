package rigwarden.rig;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A one-cell rig built in code, for tests that need no file. */
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
                new BusSide(1, 0.02, 47, 4), guards, Optional.empty(),
                Channels.of(SCAN_NANOS, shunt, inputs, probes, devices), new Rehearsed(22, 0, 0, 0.004));
    }

    private static Probe probe(String name, Role place, int cell, boolean positive, int address) {
        return new Probe(name, place, cell, positive, 3, address, 1.8, 8, 2 * SCAN_NANOS);
    }
}
