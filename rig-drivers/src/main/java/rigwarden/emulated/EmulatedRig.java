package rigwarden.emulated;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import rigwarden.bench.Agents;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.loop.Pacer;
import rigwarden.pack.Chance;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.pack.World;
import rigwarden.rig.Device;
import rigwarden.rig.Panel;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;
import rigwarden.serial.AgentState;
import rigwarden.serial.InstrumentAgent;

/**
 * A rig file's rig, emulated: one world, one board with every chip of the file, source and sink, and the real drivers on
 * top. The whole of it can be copied at any instant and run on from there.
 *
 * <p>Transfers take no virtual time; waits of drivers do. The world is moved on at the start of a scan, at every change of
 * an order or of a line other than the heartbeat's, and when the last move is more than 20 ms old; in between its slow nodes are taken as they were.
 */
public final class EmulatedRig {

    private final Rig rig;
    private final Specimen specimen;
    private final World world;
    private final VirtualClock clock;
    private final EmulatedBoard board;
    private final Ina228Emulator shunt;
    private final Map<Integer, Ads1115Emulator> converters = new HashMap<>();
    private final Mcp9601Emulator[] probes;
    private final List<Optional<EmulatedInstrument>> instruments = new ArrayList<>();
    private final Agents agents;
    private final Map<Integer, FaultyTarget> faulty = new HashMap<>();
    private final Defects defects;
    private final Wirings wirings;
    private final CellWindow window;
    private Optional<WireUpsets> upsets = Optional.empty();
    private final RigBench bench;
    private final OwnWorld own;

    /**
     * A fresh specimen of a rig at rest, the arm key turned.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public EmulatedRig(Rig rig, long seed) throws BusFailure {
        this(rig, seed, new VirtualClock(0), Optional.empty());
    }

    /**
     * A fresh specimen in real time, whose instruments are other processes: chips, panel and cells are here, and whoever
     * owns those processes carries orders to {@link #terminals}.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public EmulatedRig(Rig rig, long seed, WallClock clock, Agents agents) throws BusFailure {
        this(rig, seed, clock, Optional.of(agents));
    }

    private EmulatedRig(Rig rig, long seed, VirtualClock clock, Optional<Agents> outside) throws BusFailure {
        Emulable.check(rig);
        this.rig = rig;
        this.clock = clock;
        specimen = new Specimen(rig, seed);
        world = new World(specimen.world(), specimen.arrival());
        world.arm(true);
        defects = new Defects(rig.probes().size(), rig.inputs().size());
        wirings = new Wirings(rig, specimen, world, clock, defects);
        window = new CellWindow(rig, false);
        own = new OwnWorld();
        shunt = new Ina228Emulator(wirings.shuntWiring(), specimen.shuntErrors(), specimen.noise("shunt"));
        converters();
        probes = probeChips();
        for (Device device : rig.devices()) {
            instruments.add(outside.isPresent() ? Optional.empty() : instrument(device));
        }
        agents = outside.orElseGet(() -> agents(_ -> AgentState.at(0)));
        board = board();
        bench = RigBench.start(rig, board.context(), clock, agents, own.readings(clock));
    }

    private EmulatedRig(EmulatedRig other) throws BusFailure {
        rig = other.rig;
        specimen = other.specimen;
        world = other.world.copy();
        clock = new VirtualClock(other.clock.nanos());
        defects = other.defects.copy();
        wirings = new Wirings(rig, specimen, world, clock, defects);
        window = new CellWindow(rig, other.window.opened());
        own = other.own.copy();
        shunt = other.shunt.copy(wirings.shuntWiring());
        for (VoltageInput input : rig.inputs()) {
            int key = key(input.bus(), input.address());
            converters.computeIfAbsent(key,
                    k -> other.converters.get(k).copy(wirings.inputWiring(input.bus(), input.address())));
        }
        probes = new Mcp9601Emulator[other.probes.length];
        for (int i = 0; i < probes.length; i++) {
            probes[i] = other.probes[i].copy(wirings.probeWiring(i));
        }
        for (int i = 0; i < rig.devices().size(); i++) {
            Terminals terminals = wirings.terminals(rig.devices().get(i));
            instruments.add(other.instruments.get(i).map(it -> it.copy(terminals, clock)));
        }
        agents = agents(i -> other.agents.agents().get(i).orElseThrow().state());
        board = board();
        other.faulty.forEach((key, chip) -> fail(key, chip.copy(chip(key))));
        board.meddleLike(other.board, clock);
        wirings.spikesLike(other.wirings);
        upsets = other.upsets.map(WireUpsets::copy);
        upsets.ifPresent(board::upset);
        bench = RigBench.resume(rig, board.context(), clock, agents, own.readings(clock), other.bench.state());
    }

    /** Whoever was supplied has let go, some time has passed, and the supply is there again. */
    private EmulatedRig(EmulatedRig other, long outageNanos) throws BusFailure {
        rig = other.rig;
        specimen = other.specimen;
        world = other.world.copy();
        clock = new VirtualClock(other.clock.nanos() + outageNanos);
        defects = other.defects.copy();
        wirings = new Wirings(rig, specimen, world, clock, defects);
        world.advanceTo(other.clock.nanos());
        dark();
        world.advanceTo(clock.nanos());
        window = new CellWindow(rig, other.window.opened());
        own = new OwnWorld();
        shunt = new Ina228Emulator(wirings.shuntWiring(), specimen.shuntErrors(), specimen.noise("shunt"));
        converters();
        probes = probeChips();
        for (Device device : rig.devices()) {
            instruments.add(instrument(device));
        }
        agents = agents(_ -> AgentState.at(clock.nanos()));
        board = board();
        other.faulty.forEach((key, chip) -> fail(key, chip.copy(chip(key))));
        wirings.spikesAsStrongAs(other.wirings);
        upsets = other.upsets.map(WireUpsets::copy);
        upsets.ifPresent(board::upset);
        bench = RigBench.start(rig, board.context(), clock, agents, own.readings(clock));
    }

    private void dark() {
        world.line(Line.CONTACTOR, false);
        world.line(Line.PRECHARGE, false);
        world.line(Line.HEARTBEAT, false);
        world.line(Line.SOUNDER, false);
        for (Device device : rig.devices()) {
            world.line(relay(device), false);
            if (device instanceof Device.Programmed && device.charges()) {
                world.source(wirings.place(device), false, 0, 0);
            } else if (device instanceof Device.Programmed) {
                world.sink(wirings.place(device), false, 0);
            }
        }
    }

    /**
     * The same specimen after its supply, the computer's and the instruments', was cut at this instant and came back: cells
     * and faults are as they were left, every chip and instrument begins anew.
     *
     * @param outageNanos how long the supply was away, not negative
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public EmulatedRig afterCut(long outageNanos) throws BusFailure {
        return new EmulatedRig(this, outageNanos);
    }

    private void converters() {
        for (VoltageInput input : rig.inputs()) {
            converters.computeIfAbsent(key(input.bus(), input.address()), key -> new Ads1115Emulator(
                    wirings.inputWiring(input.bus(), input.address()), specimen.inputErrors(input),
                    specimen.noise("converter " + key)));
        }
    }

    private Mcp9601Emulator[] probeChips() {
        Mcp9601Emulator[] chips = new Mcp9601Emulator[rig.probes().size()];
        for (int i = 0; i < chips.length; i++) {
            Probe probe = rig.probes().get(i);
            chips[i] = new Mcp9601Emulator(wirings.probeWiring(i), specimen.probeErrors(probe), specimen.noise(probe.name()));
        }
        return chips;
    }

    private static int key(int bus, int address) {
        return bus << 8 | address;
    }

    /** Another rig, the same in everything, that goes its own way from here. */
    public EmulatedRig copy() {
        try {
            return new EmulatedRig(this);
        } catch (BusFailure e) {
            throw new IllegalStateException("a copied board lost a line", e);
        }
    }

    private EmulatedBoard board() {
        EmulatedBoard made = new EmulatedBoard();
        wire(made);
        return made;
    }

    private Optional<EmulatedInstrument> instrument(Device device) {
        return switch (device) {
            case Device.Programmed p -> Optional.of(new EmulatedInstrument(p, wirings.terminals(p),
                    specimen.instrumentErrors(p.name(), p.instrument()), clock));
            case Device.PlainCharger _, Device.Inverter _ -> Optional.empty();
        };
    }

    private Agents agents(IntFunction<AgentState> states) {
        List<Optional<InstrumentAgent>> made = new ArrayList<>();
        for (int i = 0; i < rig.devices().size(); i++) {
            int place = i;
            made.add(switch (rig.devices().get(i)) {
                case Device.Programmed p -> Optional.of(InstrumentAgent.of(rig, p,
                        instruments.get(place).orElseThrow().line(), states.apply(place)));
                case Device.PlainCharger _, Device.Inverter _ -> Optional.empty();
            });
        }
        return new Agents(made, true);
    }

    private Line relay(Device device) {
        return device.charges() ? Line.source(wirings.place(device)) : Line.sink(wirings.place(device));
    }

    private void wire(EmulatedBoard made) {
        made.put(rig.shunt().bus(), rig.shunt().address(), shunt);
        converters.forEach((key, chip) -> made.put(key >> 8, key & 0xFF, chip));
        for (int i = 0; i < probes.length; i++) {
            made.put(rig.probes().get(i).bus(), rig.probes().get(i).address(), probes[i]);
        }
        Panel panel = rig.panel();
        output(made, panel.contactor(), Line.CONTACTOR);
        output(made, panel.precharge(), Line.PRECHARGE);
        for (Device device : rig.devices()) {
            Line relay = relay(device);
            output(made, device.relay(), relay);
        }
        output(made, panel.heartbeat(), Line.HEARTBEAT);
        output(made, panel.sounder(), Line.SOUNDER);
        input(made, panel.loop(), World::loopClosed);
        input(made, panel.coilFeed(), World::coilFeed);
        input(made, panel.feedback(), World::feedback);
        input(made, panel.arm(), World::armed);
    }

    private void input(EmulatedBoard made, int bcm, Predicate<World> truth) {
        made.input(bcm, () -> defects.stuckLines.containsKey(bcm) ? defects.stuckLines.get(bcm) : truth.test(wirings.now()));
    }

    private void output(EmulatedBoard made, int bcm, Line line) {
        made.output(bcm, high -> {
            if (!defects.stuckLines.containsKey(bcm)) {
                line(line, high);
            }
        });
    }

    private RegisterChip chip(int key) {
        if (key == key(rig.shunt().bus(), rig.shunt().address())) {
            return shunt;
        }
        for (int i = 0; i < probes.length; i++) {
            if (key == key(rig.probes().get(i).bus(), rig.probes().get(i).address())) {
                return probes[i];
            }
        }
        return Objects.requireNonNull(converters.get(key), "a chip of the rig file");
    }

    private void fail(int key, FaultyTarget chip) {
        faulty.put(key, chip);
        board.replace(key >> 8, key & 0xFF, chip);
    }

    private void line(Line line, boolean high) {
        if (!line.equals(Line.HEARTBEAT)) {
            world.advanceTo(clock.nanos());
        }
        if (line.equals(Line.CONTACTOR)) {
            wirings.contactorSwitched();
        }
        wirings.now().line(line, high);
    }

    /** Something goes wrong, now. */
    public void inflict(BoardFault fault) {
        world.advanceTo(clock.nanos());
        switch (fault) {
            case BoardFault.InWorld f -> {
                world.inflict(f.fault());
                defects.protectionDead |= f.fault() instanceof Fault.SourceRunaway;
            }
            case BoardFault.OpenProbe f -> defects.probeOpen[f.probe()] = true;
            case BoardFault.SilentDevice f -> silence(f.device());
            case BoardFault.WiresUpset f -> {
                upsets = Optional.of(new WireUpsets(Chance.of(f.seed(), "wires", "upset"), f.share()));
                board.upset(upsets.get());
            }
            case BoardFault.CardStalls f -> {
                own.stalledSinceNanos = clock.nanos();
                own.stalledToNanos = clock.nanos() + Math.round(f.seconds() * 1e9);
            }
            case BoardFault.CardFills f -> own.freeBytes = f.bytesLeft();
            case BoardFault.ComputerStalls f -> clock.sleepUntil(clock.nanos() + Math.round(f.seconds() * 1e9));
            case BoardFault.ClockStands f -> own.clockStands = f.scans();
            case BoardFault.ContactorSpikes f -> wirings.spikes(f.volts());
            case BoardFault.BusErrs f -> {
                EmulatedI2cBus bus = board.existingBus(f.bus());
                bus.meddle(wire -> new BusErrors(wire, clock, bus.addresses(), f.error(), f.share(),
                        Math.round(f.delaySeconds() * 1e9), Chance.of(f.seed(), "bus " + f.bus(), "errors")));
            }
            case BoardFault.PortErrs f -> line(f.device()).meddle(port -> new PortErrors(port, clock, f.error(), f.share(),
                    Math.round(f.delaySeconds() * 1e9), Chance.of(f.seed(), "port " + f.device(), "errors")));
            case BoardFault.BytesMangled f -> mangle(f);
            case BoardFault.ChipFails f -> {
                int key = key(f.bus(), f.address());
                if (!faulty.containsKey(key)) {
                    fail(key, new FaultyTarget(chip(key)));
                }
                faulty.get(key).set(f.how());
            }
            case BoardFault.LinkFails f -> line(f.device()).set(f.how());
            case BoardFault.InputStuck f -> defects.stuckLines.put(f.bcm(), f.high());
            case BoardFault.OutputStuck f -> {
                board.sinks(f.bcm()).forEach(sink -> sink.level(f.high()));
                defects.stuckLines.put(f.bcm(), f.high());
            }
            case BoardFault.ShuntDrifts f -> {
                defects.shuntCoulombs += defects.shuntFactor * (1 - f.factor()) * wirings.tilted(world);
                defects.shuntFactor *= f.factor();
            }
            case BoardFault.InputDrifts f -> defects.inputFactor[f.input()] *= f.factor();
            case BoardFault.ProbeDrifts f -> defects.probeKelvin[f.probe()] += f.kelvin();
            case BoardFault.ProbeShorted f -> defects.probeShorted[f.probe()] = true;
        }
    }

    private EmulatedLine line(int device) {
        return instruments.get(device).orElseThrow().line();
    }

    private void mangle(BoardFault.BytesMangled fault) {
        for (int bus : board.busNumbers()) {
            board.existingBus(bus).meddle(wire ->
                    new MangledWire(wire, fault.share(), Chance.of(fault.seed(), "bus " + bus, "mangled")));
        }
        for (int i = 0; i < instruments.size(); i++) {
            int place = i;
            instruments.get(i).ifPresent(one -> one.line().meddle(port ->
                    new MangledPort(port, fault.share(), Chance.of(fault.seed(), "port " + place, "mangled"))));
        }
    }

    private void silence(int device) {
        Device silent = rig.devices().get(device);
        world.inflict(silent.charges() ? new Fault.SourceDeaf(wirings.place(silent)) : new Fault.SinkDeaf(wirings.place(silent)));
        instruments.get(device).orElseThrow().line().set(LineFault.SILENT);
    }

    /** Waits for a scan's slot, and keeps how late it is; while the clock stands nothing is waited for. */
    public void await(Pacer pacer) {
        if (own.clockStands > 0) {
            own.clockStands--;
            clock.back(own.scanNanos);
            return;
        }
        pacer.await();
        own.scanNanos = clock.nanos();
        own.lateSeconds = pacer.lateSeconds();
    }

    /** The recorder lags by so much from now, s. */
    public void recorderLag(double seconds) {
        own.lagSeconds = seconds;
    }

    /** A calibrator holds a channel's input at a value in its unit, from now on. A copy of this rig has none. */
    public void hold(String channel, double value) {
        wirings.hold(channel, value);
    }

    /** Voltage that a meter at the shunt's sense screws would see at a current, V. */
    public double senseVolts(double amps) {
        return wirings.senseVolts(amps);
    }

    /** Resistance of this specimen's shunt at 25 °C, as a certificate would find it, ohm. */
    public double shuntOhms() {
        return specimen.shuntOhms();
    }

    /** What a device's power leads are bolted to. */
    public Terminals terminals(int device) {
        return wirings.terminals(rig.devices().get(device));
    }

    /**
     * From now on one message in about so many, to or from this device, has some of its bits turned.
     *
     * @return how many were
     */
    public AtomicLong glitches(int device, int every, long seed) {
        AtomicLong count = new AtomicLong();
        line(device).meddle(port -> new GlitchedPort(port, every, count, Chance.of(seed, "port " + device, "glitches")));
        return count;
    }

    public World world() {
        return world;
    }

    /** Whether the hardware window has opened the loop. */
    public boolean windowOpened() {
        return window.opened();
    }

    /** Whether a programmable device has switched itself off at its own limit. */
    public boolean ownLimitReached() {
        return instruments.stream().flatMap(Optional::stream).anyMatch(one -> one.end().protectedItself());
    }

    public VirtualClock clock() {
        return clock;
    }

    public EmulatedBoard emulatedBoard() {
        return board;
    }

    public RigBench rigBench() {
        return bench;
    }

    /** Brings the world to the clock's time; the hardware window and the devices look at their own limits. */
    public void catchUp() {
        world.advanceTo(clock.nanos());
        window.look(world);
        for (int i = 0; i < instruments.size(); i++) {
            boolean dead = defects.protectionDead && rig.devices().get(i).charges();
            if (!dead && instruments.get(i).isPresent()) {
                instruments.get(i).get().end().protect();
            }
        }
    }
}
