package rigwarden.proof;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import rigwarden.bench.Agents;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.WallClock;
import rigwarden.loop.Bench;
import rigwarden.loop.Loop;
import rigwarden.loop.Pacer;
import rigwarden.program.Program;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.serial.AgentState;
import rigwarden.serial.AgentThread;
import rigwarden.serial.Characters;
import rigwarden.serial.Heard;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.JSerialLine;
import rigwarden.warden.Inbox;
import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;
import rigwarden.warden.Warden;

/** A run in real time: the real loop and agents, chips emulated in this process, instruments in processes of their own. */
final class OutsideRun implements AutoCloseable {
    private static final long PATIENCE_NANOS = 60_000_000_000L;
    /** Scans with both instruments answering, after which the run is started. */
    private static final int HEALTHY_SCANS = 30;

    final EmulatedRig emulated;
    final WallClock clock = new WallClock();
    final Pacer pacer;
    final List<OutsideInstrument> instruments = new ArrayList<>();
    final List<InstrumentAgent> agents = new ArrayList<>();
    private final List<AgentThread> threads = new ArrayList<>();
    private final Loop loop;
    private int answering;
    private boolean asked;
    private volatile long beatNanos;
    private boolean energised;
    /** When the last Off went out that ended an energised state, on the clock of this run. */
    long offNanos;
    /** When the last scan began, and how late that was. */
    long begunNanos;
    long lateNanos;
    final Deque<Request> wishes = new ArrayDeque<>();
    final List<TimedLine> lines = new ArrayList<>();
    Optional<Event.Tripped> tripped = Optional.empty();

    OutsideRun(Path folder, Path rigFile, Rig rig, Program program, long seed) throws IOException, BusFailure {
        for (int i = 0; i < rig.devices().size(); i++) {
            instruments.add(new OutsideInstrument(folder, rigFile, i, seed + i));
        }
        long end = System.nanoTime() + PATIENCE_NANOS;
        while (!instruments.stream().allMatch(OutsideInstrument::ready)) {
            if (System.nanoTime() > end) {
                throw new IOException("an instrument did not start");
            }
            LockSupport.parkNanos(10_000_000);
        }
        List<Optional<InstrumentAgent>> made = new ArrayList<>();
        for (int i = 0; i < rig.devices().size(); i++) {
            Device.Programmed device = (Device.Programmed) rig.devices().get(i);
            JSerialLine line = new JSerialLine(instruments.get(i).port().toString(), Characters.of(device.instrument()));
            lines.add(new TimedLine(line));
            InstrumentAgent agent = InstrumentAgent.of(rig, device, lines.getLast(), AgentState.at(clock.nanos()));
            agents.add(agent);
            made.add(Optional.of(agent));
            threads.add(AgentThread.start(agent, clock, device.name(), _ -> { }));
        }
        emulated = new EmulatedRig(rig, seed, clock, new Agents(made, false));
        pacer = Pacer.ofScan(clock, rig.scanNanos());
        Warden warden = new Warden(rig);
        loop = new Loop(new Watched(), warden, new RunMachine(rig, program, Optional.empty()), (_, _, _, _) -> { },
                () -> inbox(program),
                Loop.fresh(warden, clock.nanos(), Optional.empty()));
    }

    /** The emulated bench with an eye on the heartbeat. */
    private final class Watched implements Bench {
        @Override
        public Scan take() {
            return emulated.rigBench().take();
        }

        @Override
        public boolean apply(Orders orders) {
            boolean out = emulated.rigBench().apply(orders);
            boolean now = orders instanceof Orders.Energised;
            offNanos = energised && !now ? clock.nanos() : offNanos;
            energised = now;
            return out;
        }

        @Override
        public void beat(Lease lease) {
            beatNanos = clock.nanos();
            emulated.rigBench().beat(lease);
        }
    }

    private Inbox inbox(Program program) {
        boolean all = agents.stream().allMatch(agent -> agent.heard() instanceof Heard.Answer);
        answering = all ? answering + 1 : 0;
        if (asked || answering < HEALTHY_SCANS) {
            return wishes.isEmpty() ? Inbox.EMPTY : Inbox.of(wishes.remove());
        }
        asked = true;
        return Inbox.of(RunMachine.start(program));
    }

    /** One scan. */
    List<Event> scan() {
        emulated.await(pacer);
        begunNanos = clock.nanos();
        lateNanos = Math.round(pacer.lateSeconds() * 1e9);
        for (int i = 0; i < instruments.size(); i++) {
            instruments.get(i).carry(emulated.terminals(i));
        }
        emulated.catchUp();
        List<Event> events = loop.cycle();
        for (Event event : events) {
            if (event instanceof Event.Tripped trip && tripped.isEmpty()) {
                tripped = Optional.of(trip);
            }
        }
        return events;
    }

    /** Whether the contactor has let go. */
    boolean open() {
        emulated.catchUp();
        return !emulated.world().feedback();
    }

    /** When the heartbeat was last toggled, on the clock of this run. */
    long beatNanos() {
        return beatNanos;
    }

    RunState state() {
        return loop.standing().state();
    }

    boolean over() {
        return state() instanceof RunState.Finished || state() instanceof RunState.Interrupted;
    }

    @Override
    public void close() throws IOException {
        threads.forEach(AgentThread::close);
        for (OutsideInstrument instrument : instruments) {
            instrument.close();
        }
    }
}
