package rigwarden.emulated;

import java.util.HashMap;
import java.util.Map;
import rigwarden.bench.Agents;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.pack.Node;
import rigwarden.pack.World;
import rigwarden.rig.Panel;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;
import rigwarden.serial.AgentState;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.InstrumentKind;

/**
 * A rig file's rig, emulated: one world, one board with every chip of the file, source and sink, and the real drivers on
 * top. The whole of it can be copied at any instant and run on from there.
 *
 * <p>Transfers take no virtual time; waits of drivers do. The world is moved on at the start of a scan, at every change of
 * an order or of a line other than the heartbeat's, and when the last move is more than 20 ms old; in between its slow nodes are taken as they were.
 */
public final class EmulatedRig {
    private static final long COARSE_NANOS = 20_000_000L;
    private static final double REFERENCE_C = 25;

    private final Rig rig;
    private final Specimen specimen;
    private final World world;
    private final VirtualClock clock;
    private final EmulatedBoard board;
    private final Ina228Emulator shunt;
    private final Map<Integer, Ads1115Emulator> converters = new HashMap<>();
    private final Mcp9601Emulator[] probes;
    private final ScpiInstrument sourceScpi;
    private final ScpiInstrument sinkScpi;
    private final EmulatedLine sourceLine;
    private final EmulatedLine sinkLine;
    private final Agents agents;
    private final boolean[] probeOpen;
    /** A regulator that runs away takes its own protection with it: the worst case. */
    private boolean protectionDead;
    private final RigBench bench;
    private final OwnWorld own;

    /**
     * A fresh specimen of a rig at rest, the arm key turned.
     *
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public EmulatedRig(Rig rig, long seed) throws BusFailure {
        this.rig = rig;
        specimen = new Specimen(rig, seed);
        world = new World(specimen.world(), specimen.arrival());
        world.arm(true);
        clock = new VirtualClock(0);
        own = new OwnWorld();
        shunt = new Ina228Emulator(shuntWiring(), specimen.shuntErrors(), specimen.noise("shunt"));
        for (VoltageInput input : rig.inputs()) {
            converters.computeIfAbsent(key(input.bus(), input.address()), key -> new Ads1115Emulator(
                    inputWiring(input.bus(), input.address()), specimen.inputErrors(input),
                    specimen.noise("converter " + key)));
        }
        probes = new Mcp9601Emulator[rig.probes().size()];
        for (int i = 0; i < probes.length; i++) {
            Probe probe = rig.probes().get(i);
            probes[i] = new Mcp9601Emulator(probeWiring(i), specimen.probeErrors(probe), specimen.noise(probe.name()));
        }
        sourceScpi = ScpiInstrument.source(sourceTerminals(), specimen.instrumentErrors("source", rig.source()),
                new ScpiInstrument.Ratings(rig.source().maxVolts(), rig.source().maxAmps()));
        sinkScpi = ScpiInstrument.sink(sinkTerminals(), specimen.instrumentErrors("sink", rig.sink()),
                new ScpiInstrument.Ratings(rig.sink().maxVolts(), rig.sink().maxAmps()));
        sourceLine = new EmulatedLine(sourceScpi);
        sinkLine = new EmulatedLine(sinkScpi);
        agents = agents(AgentState.at(0), AgentState.at(0));
        board = board();
        probeOpen = new boolean[probes.length];
        bench = RigBench.start(rig, board.context(), clock, agents, own.readings());
    }

    private EmulatedRig(EmulatedRig other) throws BusFailure {
        rig = other.rig;
        specimen = other.specimen;
        world = other.world.copy();
        clock = new VirtualClock(other.clock.nanos());
        own = other.own.copy();
        shunt = other.shunt.copy(shuntWiring());
        for (VoltageInput input : rig.inputs()) {
            int key = key(input.bus(), input.address());
            converters.computeIfAbsent(key,
                    k -> other.converters.get(k).copy(inputWiring(input.bus(), input.address())));
        }
        probes = new Mcp9601Emulator[other.probes.length];
        for (int i = 0; i < probes.length; i++) {
            probes[i] = other.probes[i].copy(probeWiring(i));
        }
        sourceScpi = other.sourceScpi.copy(sourceTerminals());
        sinkScpi = other.sinkScpi.copy(sinkTerminals());
        sourceLine = other.sourceLine.copy(sourceScpi, EmulatedRig::nothing);
        sinkLine = other.sinkLine.copy(sinkScpi, EmulatedRig::nothing);
        agents = agents(other.agents.source().state(), other.agents.sink().state());
        board = board();
        probeOpen = other.probeOpen.clone();
        protectionDead = other.protectionDead;
        bench = RigBench.resume(rig, board.context(), clock, agents, own.readings(), other.bench.state());
    }

    private static int key(int bus, int address) {
        return bus << 8 | address;
    }

    /** A slice of waiting on an emulated line takes no time. */
    private static void nothing() {}

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

    private Agents agents(AgentState source, AgentState sink) {
        return new Agents(InstrumentAgent.of(InstrumentKind.SOURCE, rig, sourceLine, source),
                InstrumentAgent.of(InstrumentKind.SINK, rig, sinkLine, sink), true);
    }

    private void wire(EmulatedBoard made) {
        made.put(rig.shunt().bus(), rig.shunt().address(), shunt);
        converters.forEach((key, chip) -> made.put(key >> 8, key & 0xFF, chip));
        for (int i = 0; i < probes.length; i++) {
            made.put(rig.probes().get(i).bus(), rig.probes().get(i).address(), probes[i]);
        }
        Panel panel = rig.panel();
        made.output(panel.contactor(), high -> line(Line.CONTACTOR, high));
        made.output(panel.precharge(), high -> line(Line.PRECHARGE, high));
        made.output(panel.sourceRelay(), high -> line(Line.SOURCE_RELAY, high));
        made.output(panel.sinkRelay(), high -> line(Line.SINK_RELAY, high));
        made.output(panel.heartbeat(), high -> line(Line.HEARTBEAT, high));
        made.output(panel.sounder(), high -> line(Line.SOUNDER, high));
        made.input(panel.loop(), () -> now().loopClosed());
        made.input(panel.coilFeed(), () -> now().coilFeed());
        made.input(panel.feedback(), () -> now().feedback());
        made.input(panel.arm(), () -> now().armed());
    }

    private void line(Line line, boolean high) {
        if (line.kind() != Line.Kind.HEARTBEAT) {
            world.advanceTo(clock.nanos());
        }
        now().line(line, high);
    }

    /** The world, moved on if it is more than a little behind. */
    private World now() {
        if (clock.nanos() - world.nanos() > COARSE_NANOS) {
            world.advanceTo(clock.nanos());
        }
        return world;
    }

    private Ina228Emulator.Wiring shuntWiring() {
        double ohms = specimen.shuntOhms();
        double perKelvin = specimen.shuntPerKelvin();
        return new Ina228Emulator.Wiring() {
            @Override
            public long nanos() {
                return clock.nanos();
            }

            @Override
            public double shuntVolts() {
                World at = now();
                return at.amps() * ohms * (1 + perKelvin * (at.celsius(Node.SHUNT) - REFERENCE_C));
            }

            @Override
            public double shuntVoltSeconds() {
                World at = now();
                return ohms * (at.coulombs() + perKelvin * at.coulombKelvins());
            }

            @Override
            public double busVolts() {
                return now().packVolts();
            }

            @Override
            public double dieCelsius() {
                return now().celsius(Node.ROOM);
            }
        };
    }

    private Ads1115Emulator.Wiring inputWiring(int bus, int address) {
        VoltageInput[] pins = new VoltageInput[4];
        for (VoltageInput input : rig.inputs()) {
            if (input.bus() == bus && input.address() == address) {
                pins[input.input()] = input;
            }
        }
        return new Ads1115Emulator.Wiring() {
            @Override
            public long nanos() {
                return clock.nanos();
            }

            @Override
            public double inputVolts(int pin) {
                VoltageInput input = pins[pin];
                if (input == null) {
                    return 0;
                }
                double volts = input.cell() > 0 ? betweenTaps(input.cell()) : now().busVolts();
                return volts / input.divider();
            }
        };
    }

    /** What an input across one cell sees; with either wire cut its own resistance pulls it to 0 V. */
    private double betweenTaps(int cell) {
        World at = now();
        return at.tapCut(cell) || at.tapCut(cell - 1) ? 0 : at.tapVolts(cell) - at.tapVolts(cell - 1);
    }

    private Mcp9601Emulator.Wiring probeWiring(int bead) {
        return new Mcp9601Emulator.Wiring() {
            @Override
            public long nanos() {
                return clock.nanos();
            }

            @Override
            public double hotCelsius() {
                return now().beadCelsius(bead);
            }

            @Override
            public double coldCelsius() {
                return now().celsius(Node.ROOM);
            }

            @Override
            public boolean open() {
                return probeOpen[bead];
            }

            @Override
            public boolean shorted() {
                return false;
            }
        };
    }

    /** Its sense leads sit on the cells' outer studs, whatever its output does. */
    private Terminals sourceTerminals() {
        return new Terminals() {
            @Override
            public void order(boolean on, double volts, double amps) {
                world.advanceTo(clock.nanos());
                world.source(0, on, volts, amps);
            }

            @Override
            public double volts() {
                return now().packVolts();
            }

            @Override
            public double amps() {
                return now().sourceAmps(0);
            }
        };
    }

    private Terminals sinkTerminals() {
        return new Terminals() {
            @Override
            public void order(boolean on, double volts, double amps) {
                world.advanceTo(clock.nanos());
                world.sink(0, on, amps);
            }

            @Override
            public double volts() {
                return now().sinkVolts(0);
            }

            @Override
            public double amps() {
                return now().sinkAmps(0);
            }
        };
    }

    /** Something goes wrong, now. */
    public void inflict(BoardFault fault) {
        world.advanceTo(clock.nanos());
        switch (fault) {
            case BoardFault.InWorld f -> {
                world.inflict(f.fault());
                protectionDead |= f.fault() instanceof Fault.SourceRunaway;
            }
            case BoardFault.OpenProbe f -> probeOpen[f.probe()] = true;
            case BoardFault.SilentSource _ -> {
                world.inflict(new Fault.SourceDeaf(0));
                sourceLine.set(LineFault.SILENT);
            }
            case BoardFault.SilentSink _ -> {
                world.inflict(new Fault.SinkDeaf(0));
                sinkLine.set(LineFault.SILENT);
            }
        }
    }

    /** The recorder lags by so much from now, s. */
    public void recorderLag(double seconds) {
        own.lagSeconds = seconds;
    }

    public World world() {
        return world;
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

    /** Brings the world to the clock's time; source and sink look at their own limits. */
    public void catchUp() {
        world.advanceTo(clock.nanos());
        if (!protectionDead) {
            sourceScpi.protect();
        }
        sinkScpi.protect();
    }
}
