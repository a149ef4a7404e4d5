package rigwarden.bench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.rig.BusSide;
import rigwarden.rig.Calibration;
import rigwarden.rig.Cells;
import rigwarden.rig.Channels;
import rigwarden.rig.Commands;
import rigwarden.rig.Device;
import rigwarden.rig.Guards;
import rigwarden.rig.Instrument;
import rigwarden.rig.Panel;
import rigwarden.rig.PathPart;
import rigwarden.rig.Probe;
import rigwarden.rig.Rehearsed;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.ShuntMonitor;
import rigwarden.rig.VoltageInput;
import rigwarden.scripted.ScriptedShunt;
import rigwarden.scripted.Wire;

/** A small rig for tests: one shunt chip, one ADS1115 with a cell tap and the bus, two thermocouples of 200 ms. */
public final class BenchRig {
    static final long SCAN = 100_000_000;
    public static final Rig RIG = rig();

    private BenchRig() {}

    private static Rig rig() {
        ShuntMonitor shunt = new ShuntMonitor(1, 0x40, 0.0005, 0.001, 5e-5, 1e-6, 327.68);
        List<VoltageInput> inputs = List.of(
                new VoltageInput("cell_01_v", Role.CELL_VOLTS, 1, 1, 0x48, 0, 5, 1, 0, Calibration.NONE, SCAN),
                new VoltageInput("bus_v", Role.BUS_VOLTS, 0, 1, 0x48, 3, 5, 1, 0, Calibration.NONE, SCAN));
        List<Probe> probes = List.of(
                new Probe("body_c", Role.BODY, 1, false, 2, 0x60, 1.8, 5, 2 * SCAN),
                new Probe("room_c", Role.ROOM, 0, false, 2, 0x61, 1.8, 5, 2 * SCAN));
        Instrument instrument = new Instrument("tty", 115_200, 60, 5, 0, 5 * SCAN, 0.005, 0.005, Commands.SOURCE);
        List<Device> devices = List.of(new Device.Programmed("source", true, 3, List.of("k1", "relay"), instrument, true),
                new Device.Programmed("sink", false, 4, List.of("k1", "relay"), instrument, true));
        return new Rig("test", SCAN, new Cells(1, 1, 100, 3.65, 2.5, 0.5, 1),
                List.of(new PathPart("fuse", PathPart.Kind.FUSE, 100, 1000, 80, "")), Map.of(1, 400_000, 2, 100_000),
                shunt, inputs, probes, new Panel(1, 2, 5, 6, 7, 8, 9, 10), devices,
                new BusSide(10, 0.001, 1000, 1, 0.003),
                new Guards(0.6, 1, List.of("stop"), true, 3.75, 2.3, 0.1), Optional.empty(),
                Channels.of(SCAN, shunt, inputs, probes, devices), new Rehearsed(22, 0, 0, 0));
    }

    /** Puts all chips of the rig on a wire: 3.2 V at each tap, 25 °C, the loop closed. */
    static ScriptedShunt wire(Wire wire) {
        wire.put(0x48, 0, 0x64, 0);
        wire.idle(0x48, 1);
        for (int address : new int[] {0x60, 0x61}) {
            wire.put(address, 0x20, 0x41, 0x10);
            wire.put(address, 0, 0x01, 0x90);
        }
        for (int line = 7; line <= 10; line++) {
            wire.levels.put(line, line == 7);
        }
        return new ScriptedShunt(wire, 0x40);
    }
}
