package rigwarden.campaign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.BoardFault.InWorld;
import rigwarden.emulated.ChipFault;
import rigwarden.emulated.ChipPlace;
import rigwarden.emulated.LineFault;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.rig.Device;
import rigwarden.rig.Panel;
import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;

/**
 * Every fault of ISO 13849-2 that a part of the rig file can have: open, short, drift, weld, stuck. What cannot happen to a
 * part of this rig is left out. Limits without a word beside them are choices of this project.
 */
final class ComponentFaults {
    private static final double BALANCE_ABOVE_V = 3.40;
    private static final double OPEN_JOINT_OHMS = 0.1;
    private static final double FAR_V = 9;
    private static final long LEFT_BYTES = 10_000_000;
    private static final double NOMINAL_V = 3.3;
    /** A fuse carries this share of its rating for ever, and nothing is short of that. */
    private static final double FUSE_HOLDS = 1.6;
    /** In a harder short the cells' own resistance pulls them below 2.0 V before any fuse can melt. */
    private static final double MOST_SHORT = 16;
    private static final double LEAST_FUSE_A = 100;

    private final Rig rig;
    private final List<FaultKind> kinds = new ArrayList<>();

    private ComponentFaults(Rig rig) {
        this.rig = rig;
    }

    static List<FaultKind> of(Rig rig) {
        ComponentFaults faults = new ComponentFaults(rig);
        faults.cells();
        faults.measuring();
        faults.chips();
        faults.switches();
        faults.devices();
        faults.battery();
        return faults.kinds;
    }

    private void plain(String name, PartFault how, List<Place> places) {
        sized(name, how, "", 0, 0, places);
    }

    private void sized(String name, PartFault how, String unit, double limit, double most, List<Place> places) {
        if (!places.isEmpty()) {
            kinds.add(new FaultKind(name, Origin.COMPONENT, how.name().toLowerCase(Locale.ROOT), unit, limit, most, places));
        }
    }

    private static Place world(String name, Fault fault) {
        return new Place(name, (_, _) -> new InWorld(fault));
    }

    private static Place board(String name, BoardFault fault) {
        return new Place(name, (_, _) -> fault);
    }

    private static List<Place> each(int count, IntFunction<Place> place) {
        return IntStream.range(0, count).mapToObj(place).toList();
    }

    private void cells() {
        int cells = rig.cells().series();
        sized("cell heats", PartFault.SHORT, "K/min", 3, 90, each(cells, k ->
                new Place(cell(k), (size, _) -> new InWorld(new Fault.HeatRate(k, size)))));
        sized("cell leaks", PartFault.SHORT, "A", 2, 60, each(cells, k ->
                new Place(cell(k), (size, _) -> new InWorld(new Fault.Leak(k, size)))));
        sized("joint loosens", PartFault.DRIFT, "mohm", 0.35, 20, each(2 * cells, j ->
                new Place(joint(j), (size, _) -> new InWorld(new Fault.LooseJoint(j / 2, j % 2 == 0, size * 1e-3)))));
        plain("joint comes off", PartFault.OPEN, each(2 * cells, j ->
                world(joint(j), new Fault.LooseJoint(j / 2, j % 2 == 0, OPEN_JOINT_OHMS))));
    }

    private static String cell(int k) {
        return "cell " + (k + 1);
    }

    private static String joint(int j) {
        return cell(j / 2) + (j % 2 == 0 ? " positive" : " negative");
    }

    private void measuring() {
        int cells = rig.cells().series();
        plain("tap wire cut", PartFault.OPEN, each(cells, k -> world("tap " + (k + 1), new Fault.BrokenTap(k + 1))));
        sized("tap reads off", PartFault.DRIFT, "V", 0.05, 1, each(2 * cells, j -> new Place("tap " + (j / 2 + 1) + side(j), (size, _) ->
                new InWorld(new Fault.TapOffset(j / 2 + 1, j % 2 == 0 ? size : -size)))));
        List<Place> inputs = new ArrayList<>();
        List<Place> shorted = new ArrayList<>();
        for (int i = 0; i < rig.inputs().size(); i++) {
            int input = i;
            String name = rig.inputs().get(i).name();
            inputs.add(new Place(name + side(0), (size, _) -> new BoardFault.InputDrifts(input, 1 + size / 100)));
            inputs.add(new Place(name + side(1), (size, _) -> new BoardFault.InputDrifts(input, 1 / (1 + size / 100))));
            shorted.add(board(name, new BoardFault.InputDrifts(input, 0)));
        }
        sized("divider drifts", PartFault.DRIFT, "%", 1.5, 40, inputs);
        plain("input shorted", PartFault.SHORT, shorted);
        sized("shunt drifts", PartFault.DRIFT, "%", 10, 300, List.of(
                new Place("shunt" + side(0), (size, _) -> new BoardFault.ShuntDrifts(1 + size / 100)),
                new Place("shunt" + side(1), (size, _) -> new BoardFault.ShuntDrifts(1 / (1 + size / 100)))));
        plain("shunt sense leads touch", PartFault.SHORT, List.of(board("shunt", new BoardFault.ShuntDrifts(0))));
        int probes = rig.probes().size();
        plain("probe opens", PartFault.OPEN, each(probes, i -> board(probe(i), new BoardFault.OpenProbe(i))));
        plain("probe shorted", PartFault.SHORT, each(probes, i -> board(probe(i), new BoardFault.ProbeShorted(i))));
        plain("probe falls off", PartFault.OPEN, each(probes, i -> world(probe(i), new Fault.DetachedBead(i))));
        sized("probe drifts", PartFault.DRIFT, "K", 10, 100, each(2 * probes, j -> new Place(probe(j / 2) + side(j), (size, _) ->
                new BoardFault.ProbeDrifts(j / 2, j % 2 == 0 ? size : -size))));
    }

    private static String side(int j) {
        return j % 2 == 0 ? ", more" : ", less";
    }

    private String probe(int i) {
        return rig.probes().get(i).name();
    }

    private void chips() {
        Map<String, ChipPlace> chips = ChipParts.of(rig);
        chip("chip silent", PartFault.OPEN, chips, ChipFault.Plain.NO_ANSWER);
        chip("chip all ones", PartFault.SHORT, chips, ChipFault.Plain.ALL_ONES);
        chip("chip frozen", PartFault.STUCK, chips, ChipFault.Plain.STUCK);
        chip("chip browns out", PartFault.DRIFT, chips, ChipFault.Plain.BROWN_OUT);
    }

    private void chip(String name, PartFault how, Map<String, ChipPlace> chips, ChipFault fault) {
        plain(name, how, chips.entrySet().stream()
                .map(c -> board(c.getKey(), new BoardFault.ChipFails(c.getValue(), fault))).toList());
    }

    private void switches() {
        Map<String, Line> contacts = new LinkedHashMap<>();
        contacts.put("contactor", Line.CONTACTOR);
        contacts.put("precharge", Line.PRECHARGE);
        Panel panel = rig.panel();
        Map<String, Integer> outputs = new LinkedHashMap<>();
        outputs.put("contactor", panel.contactor());
        outputs.put("precharge", panel.precharge());
        outputs.put("heartbeat", panel.heartbeat());
        outputs.put("sounder", panel.sounder());
        for (Device device : rig.devices()) {
            int place = rig.devices(device.charges()).indexOf(device);
            contacts.put("relay of " + device.name(), device.charges() ? Line.source(place) : Line.sink(place));
            outputs.put("relay of " + device.name(), device.relay());
        }
        plain("contact welds", PartFault.WELD, contacts.entrySet().stream().map(c -> world(c.getKey(), new Fault.Weld(c.getValue()))).toList());
        plain("contact stays open", PartFault.OPEN, contacts.entrySet().stream().map(c -> world(c.getKey(), new Fault.StuckOpen(c.getValue()))).toList());
        outputs.putAll(ChipParts.selects(rig));
        Map<String, Integer> inputs = new LinkedHashMap<>();
        inputs.put("loop", panel.loop());
        inputs.put("coil feed", panel.coilFeed());
        inputs.put("feedback", panel.feedback());
        inputs.put("arm", panel.arm());
        inputs.putAll(ChipParts.readyLines(rig));
        for (boolean high : new boolean[] {true, false}) {
            String level = high ? " high" : " low";
            plain("output stuck" + level, PartFault.STUCK, outputs.entrySet().stream()
                    .map(o -> board(o.getKey(), new BoardFault.OutputStuck(o.getValue(), high))).toList());
            plain("input stuck" + level, PartFault.STUCK, inputs.entrySet().stream()
                    .map(i -> board(i.getKey(), new BoardFault.InputStuck(i.getValue(), high))).toList());
            plain("heartbeat stage stuck" + level, PartFault.STUCK, List.of(world("heartbeat stage", new Fault.StuckHeartbeat(high))));
        }
        sized("heartbeat stage slow", PartFault.DRIFT, "s", rig.guards().heartbeatLongest(), 600, List.of(
                new Place("heartbeat stage", (size, _) -> new InWorld(new Fault.SlowHeartbeat(size)))));
        plain("loop opens", PartFault.OPEN, List.of(world("loop", new Fault.LoopOpens())));
    }

    private void devices() {
        List<Place> high = new ArrayList<>();
        List<Place> away = new ArrayList<>();
        List<Place> more = new ArrayList<>();
        List<Place> deaf = new ArrayList<>();
        List<Place> links = new ArrayList<>();
        List<Place> meters = new ArrayList<>();
        for (int i = 0; i < rig.devices().size(); i++) {
            Device device = rig.devices().get(i);
            int place = rig.devices(device.charges()).indexOf(device);
            if (device.charges()) {
                high.add(new Place(device.name(), (size, _) -> new InWorld(new Fault.ChargerHigh(place, size))));
                away.add(new Place(device.name(), (size, _) -> new InWorld(new Fault.SourceRunaway(place, size))));
            }
            if (!device.charges()) {
                more.add(new Place(device.name(), (size, _) -> new InWorld(new Fault.SinkRunaway(place, 1 + size / 100))));
            }
            if (!device.switched()) {
                int number = i;
                meters.add(new Place(device.name() + side(0), (size, _) -> new BoardFault.MeterReadsOff(number, 1 + size / 100)));
                meters.add(new Place(device.name() + side(1), (size, _) -> new BoardFault.MeterReadsOff(number, 1 / (1 + size / 100))));
                deaf.add(world(device.name(), device.charges() ? new Fault.SourceDeaf(place) : new Fault.SinkDeaf(place)));
                deaf.add(board(device.name() + ", and silent", new BoardFault.SilentDevice(i)));
                for (LineFault fault : LineFault.values()) {
                    if (fault != LineFault.HEALTHY) {
                        links.add(board("link of " + device.name() + ", " + fault.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                                new BoardFault.LinkFails(i, fault)));
                    }
                }
            }
        }
        double volts = 0.05 * rig.cells().series();
        sized("source regulates high", PartFault.DRIFT, "V", volts, 20 * volts, high);
        sized("source runs away", PartFault.SHORT, "V", volts, 20 * volts, away);
        sized("sink takes more", PartFault.DRIFT, "%", 10, 300, more);
        double pack = NOMINAL_V * rig.cells().series();
        double fuse = rig.path().stream().filter(p -> p.kind() == PathPart.Kind.FUSE && p.common()).mapToDouble(PathPart::ratedAmps).min()
                .orElse(LEAST_FUSE_A);
        sized("bus shorted", PartFault.SHORT, "A", FUSE_HOLDS * fuse, MOST_SHORT * fuse, List.of(
                new Place("bus", (size, _) -> new InWorld(new Fault.BusShort(pack / size)))));
        sized("device meter reads off", PartFault.DRIFT, "%", 100, 10_000, meters);
        plain("device deaf", PartFault.STUCK, deaf);
        plain("link fails", PartFault.OPEN, links);
        sized("card stalls", PartFault.STUCK, "s", 10, 300, List.of(
                new Place("card", (size, _) -> new BoardFault.CardStalls(size))));
        plain("card fills", PartFault.STUCK, List.of(board("card", new BoardFault.CardFills(LEFT_BYTES))));
        sized("computer stalls", PartFault.STUCK, "s", 0.3, 60, List.of(
                new Place("computer", (size, _) -> new BoardFault.ComputerStalls(size))));
        plain("clock stands", PartFault.STUCK, List.of(board("monotonic clock", new BoardFault.ClockStands(1))));
        sized("room jumps", PartFault.DRIFT, "K", 15, 40, List.of(
                new Place("room" + side(0), (size, _) -> new InWorld(new Fault.RoomStep(size))),
                new Place("room" + side(1), (size, _) -> new InWorld(new Fault.RoomStep(-size)))));
    }

    private void battery() {
        rig.protection().ifPresent(p -> {
            sized("protection opens early", PartFault.DRIFT, "V", 0.05, 1, List.of(
                    new Place("its high edge", (size, _) -> new InWorld(new Fault.ProtectionSet(p.highVolts() - size, p.lowVolts()))),
                    new Place("its low edge", (size, _) -> new InWorld(new Fault.ProtectionSet(p.highVolts(), p.lowVolts() + size)))));
            plain("protection never opens", PartFault.SHORT, List.of(
                    world("protection", new Fault.ProtectionSet(FAR_V, -FAR_V))));
        });
        sized("balancer works", PartFault.DRIFT, "A", 0.5, 10, List.of(
                new Place("balancer", (size, _) -> new InWorld(new Fault.BalancerOn(size, BALANCE_ABOVE_V)))));
    }
}
