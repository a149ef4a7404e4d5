package rigwarden.emulated;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.IntFunction;
import rigwarden.bench.Agents;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.loop.Pacer;
import rigwarden.pack.Chance;
import rigwarden.pack.Fault;
import rigwarden.pack.World;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rig.Spot;
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
    private final RigChips chips;
    private final List<Optional<EmulatedInstrument>> instruments = new ArrayList<>();
    private final Agents agents;
    private final Defects defects;
    private final Wirings wirings;
    private final CellWindow window;
    private Optional<WireUpsets> upsets = Optional.empty();
    private Optional<Spot> laid = Optional.empty();
    private final RigBench bench;
    private final OwnWorld own;

    /**
     * A fresh specimen of a rig at rest, the arm key turned.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public EmulatedRig(Rig rig, long seed) throws BusFailure {
        this(rig, new Specimen(rig, seed), new VirtualClock(0), Optional.empty());
    }

    /**
     * A fresh specimen in real time, whose instruments are other processes: chips, panel and cells are here, and whoever
     * owns those processes carries orders to {@link #terminals}.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public EmulatedRig(Rig rig, long seed, WallClock clock, Agents agents) throws BusFailure {
        this(rig, new Specimen(rig, seed), clock, Optional.of(agents));
    }

    private EmulatedRig(Rig rig, Specimen specimen, VirtualClock clock, Optional<Agents> outside) throws BusFailure {
        this.rig = rig;
        this.clock = clock;
        this.specimen = specimen;
        world = new World(specimen.world(), specimen.arrival());
        world.arm(true);
        defects = new Defects(rig.probes().size(), rig.inputs().size());
        wirings = new Wirings(rig, specimen, world, clock, defects);
        window = new CellWindow(rig, false);
        own = new OwnWorld();
        chips = RigChips.fresh(rig, wirings, specimen);
        for (Device device : rig.devices()) {
            instruments.add(outside.isPresent() ? Optional.empty() : instrument(device));
        }
        agents = outside.orElseGet(() -> agents(_ -> AgentState.at(0)));
        board = board();
        bench = RigBench.start(rig, board.context(), clock, agents, own.readings(clock));
    }

    /**
     * One whose every error stands at the edge of its tolerance, on one side or the other.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public static EmulatedRig atTheEdges(Rig rig, long seed) throws BusFailure {
        return new EmulatedRig(rig, Specimen.atTheEdges(rig, seed), new VirtualClock(0), Optional.empty());
    }

    /**
     * One whose chips have no noise of their own: at rest their codes stand still for hours.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public static EmulatedRig quiet(Rig rig, long seed) throws BusFailure {
        return new EmulatedRig(rig, Specimen.quiet(rig, seed), new VirtualClock(0), Optional.empty());
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
        chips = other.chips.copy(wirings);
        for (int i = 0; i < rig.devices().size(); i++) {
            Terminals terminals = wirings.terminals(rig.devices().get(i));
            instruments.add(other.instruments.get(i).map(it -> it.copy(terminals, clock)));
        }
        agents = agents(i -> other.agents.agents().get(i).orElseThrow().state());
        board = board();
        board.meddleLike(other.board, clock);
        wirings.spikesLike(other.wirings);
        laid = other.laid;
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
        chips = RigChips.fresh(rig, wirings, specimen);
        for (Device device : rig.devices()) {
            instruments.add(instrument(device));
        }
        agents = agents(_ -> AgentState.at(clock.nanos()));
        chips.sufferLike(other.chips);
        board = board();
        wirings.spikesAsStrongAs(other.wirings);
        laid = other.laid;
        upsets = other.upsets.map(WireUpsets::copy);
        upsets.ifPresent(board::upset);
        bench = RigBench.start(rig, board.context(), clock, agents, own.readings(clock));
    }

    private void dark() {
        wirings.panel().dark(world);
        for (Device device : rig.devices()) {
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

    /** Another rig, the same in everything, that goes its own way from here. */
    public EmulatedRig copy() {
        try {
            return new EmulatedRig(this);
        } catch (BusFailure e) {
            throw new IllegalStateException("a copied board lost a line", e);
        }
    }

    private EmulatedBoard board() {
        EmulatedBoard made = new EmulatedBoard(defects.stuckLines);
        chips.put(made);
        wirings.panel().put(made);
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

    /** Something goes wrong, now. */
    public void inflict(BoardFault fault) {
        world.advanceTo(clock.nanos());
        switch (fault) {
            case BoardFault.InWorld f -> {
                world.inflict(f.fault());
                defects.protectionDead |= f.fault() instanceof Fault.SourceRunaway;
            }
            case BoardFault.OpenProbe f -> defects.probeOpen[f.probe()] = true;
            case BoardFault.LooseLaid f -> {
                world.inflict(new Fault.LaidBead(LooseProbe.of(rig).orElseThrow(), LooseProbe.node(f.spot())));
                laid = Optional.of(f.spot());
            }
            case BoardFault.LooseDrops _ -> world.inflict(new Fault.DetachedBead(LooseProbe.of(rig).orElseThrow()));
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
            case BoardFault.SpiBusErrs f -> {
                EmulatedSpiBus bus = board.spiBus(f.bus()).orElseThrow();
                bus.meddle(wire -> new SpiErrors(wire, clock, bus.selects(), f.error(), f.share(),
                        Math.round(f.delaySeconds() * 1e9), Chance.of(f.seed(), "SPI bus " + f.bus(), "errors")));
            }
            case BoardFault.PortErrs f -> line(f.device()).meddle(port -> new PortErrors(port, clock, f.error(), f.share(),
                    Math.round(f.delaySeconds() * 1e9), Chance.of(f.seed(), "port " + f.device(), "errors")));
            case BoardFault.BytesMangled f -> mangle(f);
            case BoardFault.ChipFails f -> chips.fail(board, f.at(), f.how());
            case BoardFault.LinkFails f -> line(f.device()).set(f.how());
            case BoardFault.MeterReadsOff f -> defects.meterFactor.put(f.device(), f.factor());
            case BoardFault.InputStuck f -> defects.stuckLines.put(f.bcm(), f.high());
            case BoardFault.OutputStuck f -> wirings.panel().stick(board, f.bcm(), f.high());
            case BoardFault.ShuntDrifts f -> {
                defects.shuntCoulombs += defects.shuntFactor * (1 - f.factor()) * wirings.tilted(world);
                defects.shuntFactor *= f.factor();
            }
            case BoardFault.InputDrifts f -> defects.inputFactor[f.input()] *= f.factor();
            case BoardFault.ProbeDrifts f -> defects.probeKelvin[f.probe()] += f.kelvin();
            case BoardFault.ProbeShorted f -> defects.probeShorted[f.probe()] = true;
            case BoardFault.ProbesSwapped f -> {
                int bead = defects.beadOf[f.one()];
                defects.beadOf[f.one()] = defects.beadOf[f.other()];
                defects.beadOf[f.other()] = bead;
            }
            case BoardFault.ProbeReversed f -> defects.probeReversed[f.probe()] = true;
            case BoardFault.TapOnStud f -> defects.studOf.put(f.tap(), f.stud());
            case BoardFault.TapsSwapped f -> {
                int stud = defects.stud(f.one());
                defects.studOf.put(f.one(), defects.stud(f.other()));
                defects.studOf.put(f.other(), stud);
            }
            case BoardFault.TapOnBar f -> defects.onBar.put(f.tap(), f.share());
            case BoardFault.ShuntOffset f -> defects.shift(f.volts(), clock.nanos());
            case BoardFault.LinksTied f -> defects.linkVolts = f.volts();
            case BoardFault.ContactBridged f -> defects.bridged.add(f.contact());
            case BoardFault.LoopForgets _ -> defects.loopForgets = true;
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
        for (int number : board.spiBusNumbers()) {
            board.spiBus(number).orElseThrow().meddle(wire ->
                    new MangledSpiWire(wire, fault.share(), Chance.of(fault.seed(), "SPI bus " + number, "mangled")));
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

    /** Two fingers warm a probe, by its place in the rig file. */
    public void touch(int probe, double celsius, double contactSeconds) {
        world.advanceTo(clock.nanos());
        world.touch(probe, celsius, contactSeconds);
    }

    /** The fingers let go. */
    public void letGo() {
        world.advanceTo(clock.nanos());
        world.letGo();
    }

    /** A person opens a contact of the loop, by its place in the rig file. */
    public void openContact(int contact) {
        if (!defects.bridged.contains(contact)) {
            world.advanceTo(clock.nanos());
            world.openLoop();
        }
    }

    /** That contact closes again; a loop that latches stays open. */
    public void closeContact() {
        if (defects.loopForgets) {
            resetLoop();
        }
    }

    /** A person resets the loop. */
    public void resetLoop() {
        world.advanceTo(clock.nanos());
        world.resetLoop();
    }

    /** A person plugs in what the night will have. */
    public void plugLinks() {
        defects.shift(defects.linkVolts, clock.nanos());
        defects.linkVolts = 0;
    }

    /** The recorder lags by so much from now, s. */
    public void recorderLag(double seconds) {
        own.lagSeconds = seconds;
    }

    /** A calibrator holds a channel's input at a value in its unit, from now on. A copy of this rig has none. */
    public void hold(String channel, double value) {
        wirings.hold(channel, value);
    }

    /** The calibrator is taken off a channel's input. */
    public void release(String channel) {
        wirings.release(channel);
    }

    /** Voltage that a meter at the shunt's sense screws would see at a current, V. */
    public double senseVolts(double amps) {
        return wirings.shunt().senseVolts(amps);
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

    /** Where a person last said that the loose probe lies; empty before the first time. */
    public Optional<Spot> laid() {
        return laid;
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
