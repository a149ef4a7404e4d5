package rigwarden.bench;

import com.pi4j.context.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.loop.Bench;
import rigwarden.loop.Clock;
import rigwarden.panel.Inputs;
import rigwarden.panel.Outputs;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** The hardware of a rig. All calls come from the control thread. */
public final class RigBench implements Bench {
    /** Scans for which an instrument obeys an order that nobody renews. */
    private static final int LEASE_SCANS = 5;

    private final Clock clock;
    private final Agents agents;
    private final Outputs outputs;
    private final Actuators actuators;
    private final Table table;
    private final ShuntSense shunt;
    private final List<TapChip> taps;
    private final int rounds;
    private final Probes probes;
    private final Inputs inputs;
    private final List<Channel> senses;
    private final List<Answers> answers = new ArrayList<>();
    private final Differences differences;
    private final OwnChannels own;
    private final long scanNanos;
    private long number;

    private RigBench(Rig rig, Context context, Clock clock, Agents agents, OwnReadings own, Outputs outputs,
            Optional<BenchState> before) throws BusFailure {
        Board board = new Board(rig, context, clock);
        this.clock = clock;
        this.agents = agents;
        this.outputs = outputs;
        number = before.map(BenchState::number).orElse(0L);
        scanNanos = rig.scanNanos();
        actuators = new Actuators(outputs, agents);
        table = new Table(clock, before.map(BenchState::readings)
                .orElseGet(() -> Table.unread(rig.channels().size(), clock.nanos())));
        shunt = board.shunt(table, before);
        inputs = Inputs.claim(context, rig.panel(), outputs.expanders());
        taps = board.taps(table, before.isEmpty());
        rounds = taps.stream().mapToInt(TapChip::rounds).max().orElse(1);
        probes = board.probes(table, before);
        senses = List.of(rig.channel(Role.LOOP), rig.channel(Role.COIL_FEED), rig.channel(Role.FEEDBACK),
                rig.channel(Role.ARM));
        for (int i = 0; i < rig.devices().size(); i++) {
            String device = rig.devices().get(i).name();
            agents.of(i).ifPresent(agent -> answers.add(new Answers(agent, rig, device, table)));
        }
        differences = new Differences(rig, table);
        this.own = new OwnChannels(own, rig, table);
    }

    /**
     * Starts a rig: claims the outputs low before any chip is touched, then checks identities and configures.
     *
     * @throws BusFailure naming the part that is missing, another one, or does not keep its configuration; the
     *     outputs that could be claimed stay low
     */
    public static RigBench start(Rig rig, Context context, Clock clock, Agents agents, OwnReadings own)
            throws BusFailure {
        Outputs outputs = Outputs.claim(context, rig);
        return new RigBench(rig, context, clock, agents, own, outputs, Optional.empty());
    }

    /** Goes on with a copy of a rig, its devices in the condition that the state was taken in. Rehearsals only. */
    public static RigBench resume(Rig rig, Context context, Clock clock, Agents agents, OwnReadings own,
            BenchState state) throws BusFailure {
        Outputs outputs = Outputs.resume(context, rig, state.outputs());
        return new RigBench(rig, context, clock, agents, own, outputs, Optional.of(state));
    }

    @Override
    public Scan take() {
        number++;
        long nanos = clock.nanos();
        table.begin(nanos);
        agents.step(nanos);
        for (int round = 0; round < rounds; round++) {
            for (TapChip chip : taps) {
                chip.start(round, number);
            }
            if (round == 0) {
                readWhileTapsConvert();
            }
            for (TapChip chip : taps) {
                chip.finish(round, number);
            }
        }
        differences.read();
        answers.forEach(Answers::read);
        own.read();
        shunt.readClock();
        return new Scan(number, nanos, table.readings());
    }

    private void readWhileTapsConvert() {
        shunt.read(number);
        probes.read(number);
        outputs.refresh();
        for (Channel sense : senses) {
            table.measure(sense, () -> inputs.read(sense.role()));
        }
    }

    /** Orders under a lease of another scan than the last are turned into Off here too. */
    @Override
    public boolean apply(Orders orders) {
        if (orders instanceof Orders.Energised energised && energised.lease().scan() != number) {
            actuators.apply(Orders.OFF_NOW, Long.MAX_VALUE);
            return false;
        }
        return actuators.apply(orders, clock.nanos() + LEASE_SCANS * scanNanos);
    }

    /**
     * Toggles the heartbeat once, under a lease of the last scan and no other. A write that does not go out is a missed
     * beat, which the stage itself counts.
     */
    @Override
    public void beat(Lease lease) {
        if (lease.scan() == number) {
            outputs.toggleHeartbeat();
        }
    }

    /** What the bench knows, for a copy that goes on with other devices in the same condition. */
    public BenchState state() {
        return new BenchState(number, shunt.state(), probes.states(), table.readings(), outputs.state());
    }
}
