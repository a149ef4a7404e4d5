package rigwarden.bench;

import com.pi4j.context.Context;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.bus.NoReading;
import rigwarden.chip.ads1115.Ads1115;
import rigwarden.chip.ina228.Ina228;
import rigwarden.chip.mcp9601.Mcp9601;
import rigwarden.loop.Bench;
import rigwarden.loop.Clock;
import rigwarden.panel.Input;
import rigwarden.rig.Channel;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;
import rigwarden.serial.Answer;
import rigwarden.serial.InstrumentAgent;
import rigwarden.warden.Failure;
import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** All drivers of one rig. A failure of any of them is a reading; nothing is thrown into the loop. */
public final class RigBench implements Bench {
    /** A sample of a driver, or why there is none. */
    @FunctionalInterface
    private interface Source {
        long code() throws NoReading;
    }

    /**
     * What the drivers remember, so that a copied world can be driven on from the same instant.
     *
     * @param scans scans taken
     * @param readings last reading of every channel
     * @param shunt the shunt monitor's driver
     * @param levels of the output lines; all low at every start
     */
    public record State(long scans, List<Reading> readings, Ina228.State shunt, List<Boolean> levels) {
        /** Nothing read yet. */
        public static State fresh(Rig rig, long nanos) {
            Reading none = new Reading.Failed(Failure.NOT_READ, nanos);
            return new State(0, rig.channels().stream().map(_ -> none).toList(), Ina228.State.FRESH,
                    List.of(false, false, false, false, false, false));
        }
    }

    private final Rig rig;
    private final Clock clock;
    private final boolean stepped;
    private final InstrumentAgent source;
    private final InstrumentAgent sink;
    private final OwnReadings own;
    private final Outputs outputs;
    private final Ina228 shunt;
    private final Ads1115[] converters;
    private final VoltageInput[] inputs;
    private final Channel[] inputChannels;
    private final Mcp9601[] probes;
    private final Channel[] probeChannels;
    private final long[] probeScans;
    private final Input[] switches;
    private final Channel[] switchChannels;
    private final int current;
    private final int accumulated;
    private final int clockRatio;
    private final int pack;
    private final int sourceVolts;
    private final int sinkVolts;
    private final int recorderLag;
    private final Reading[] readings;
    private long scans;
    private Optional<Answer> lastSource = Optional.empty();
    private Optional<Answer> lastSink = Optional.empty();

    /**
     * Claims every output at its safe level, before any chip is touched.
     *
     * @param rig the rig
     * @param context Pi4J's context, real or emulated
     * @param clock the loop's clock
     * @param source agent of the source
     * @param sink agent of the sink
     * @param stepped whether the agents are stepped in the scan (rehearsal) or run by themselves (live)
     * @param own what the computer knows of itself
     * @param state what drivers remember
     */
    public RigBench(Rig rig, Context context, Clock clock, InstrumentAgent source, InstrumentAgent sink,
            boolean stepped, OwnReadings own, State state) {
        this.rig = rig;
        this.clock = clock;
        this.stepped = stepped;
        this.source = source;
        this.sink = sink;
        this.own = own;
        outputs = new Outputs(context, rig.panel(), source, sink, state.levels());
        shunt = new Ina228(new Chip(context, rig.shunt().bus(), rig.shunt().address()), rig.shunt(), state.shunt());
        inputs = rig.inputs().toArray(VoltageInput[]::new);
        converters = converters(context);
        inputChannels = Arrays.stream(inputs).map(i -> named(i.name())).toArray(Channel[]::new);
        probes = rig.probes().stream()
                .map(p -> new Mcp9601(new Chip(context, p.bus(), p.address())))
                .toArray(Mcp9601[]::new);
        probeChannels = rig.probes().stream().map(p -> named(p.name())).toArray(Channel[]::new);
        probeScans = rig.probes().stream().mapToLong(p -> Math.max(1, p.periodNanos() / rig.scanNanos())).toArray();
        switches = new Input[] {
            new Input(context, "loop", rig.panel().loop()),
            new Input(context, "coil_feed", rig.panel().coilFeed()),
            new Input(context, "feedback", rig.panel().feedback()),
            new Input(context, "arm", rig.panel().arm())
        };
        switchChannels = new Channel[] {
            rig.channel(Role.LOOP), rig.channel(Role.COIL_FEED), rig.channel(Role.FEEDBACK), rig.channel(Role.ARM)
        };
        current = rig.channel(Role.CURRENT).index();
        accumulated = rig.channel(Role.ACCUMULATED).index();
        clockRatio = rig.channel(Role.CLOCK_RATIO).index();
        pack = rig.channel(Role.PACK_VOLTS).index();
        sourceVolts = rig.channel(Role.SOURCE_VOLTS).index();
        sinkVolts = rig.channel(Role.SINK_VOLTS).index();
        recorderLag = rig.channel(Role.RECORDER_LAG).index();
        readings = state.readings().toArray(Reading[]::new);
        scans = state.scans();
    }

    private Channel named(String name) {
        return rig.channels().stream().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
    }

    private Ads1115[] converters(Context context) {
        Ads1115[] all = new Ads1115[inputs.length];
        for (int i = 0; i < inputs.length; i++) {
            for (int k = 0; k < i && all[i] == null; k++) {
                if (inputs[k].bus() == inputs[i].bus() && inputs[k].address() == inputs[i].address()) {
                    all[i] = all[k];
                }
            }
            if (all[i] == null) {
                all[i] = new Ads1115(new Chip(context, inputs[i].bus(), inputs[i].address()));
            }
        }
        return all;
    }

    /**
     * Checks identities and configures the chips. Outputs are claimed safe already.
     *
     * @throws BusFailure with a sentence that names what is wrong
     */
    public void begin() throws BusFailure {
        shunt.begin();
        for (int i = 0; i < probes.length; i++) {
            try {
                probes[i].begin();
            } catch (BusFailure e) {
                Probe probe = rig.probes().get(i);
                throw new BusFailure(probe.name() + ": " + e.getMessage());
            }
        }
    }

    public State state() {
        return new State(scans, List.of(readings), shunt.state(), outputs.levels());
    }

    @Override
    public Scan take() {
        long nanos = clock.nanos();
        scans++;
        if (stepped) {
            source.step(nanos);
            sink.step(nanos);
        }
        sampleShunt(nanos);
        for (int i = 0; i < switches.length; i++) {
            put(switchChannels[i], nanos, switches[i]::read);
        }
        for (int i = 0; i < inputs.length; i++) {
            int pin = inputs[i].input();
            Ads1115 converter = converters[i];
            put(inputChannels[i], nanos, () -> converter.convert(pin, clock));
        }
        for (int i = 0; i < probes.length; i++) {
            if ((scans + i) % probeScans[i] == 0) {
                put(probeChannels[i], nanos, probes[i]::sample);
            }
        }
        lastSource = answer(source, lastSource, sourceVolts);
        lastSink = answer(sink, lastSink, sinkVolts);
        List<Channel> channels = rig.channels();
        set(channels.get(recorderLag), own.recorderLagSeconds(), nanos);
        readings[recorderLag + 1] = Reading.of(channels.get(recorderLag + 1), own.freeBytes(), nanos);
        set(channels.get(recorderLag + 2), own.latenessSeconds(), nanos);
        shunt.learnClock(clock);
        return new Scan(scans, nanos, List.of(readings));
    }

    private void sampleShunt(long nanos) {
        List<Channel> channels = rig.channels();
        try {
            shunt.sample();
            readings[current] = Reading.of(channels.get(current), shunt.currentCode(), nanos);
            readings[accumulated] = Reading.of(channels.get(accumulated), shunt.chargeCode(), nanos);
            readings[pack] = Reading.of(channels.get(pack), shunt.busCode(), nanos);
            readings[clockRatio] = Reading.of(channels.get(clockRatio), shunt.ratioCode(), nanos);
        } catch (NoReading e) {
            failed(current, e.why(), nanos);
            failed(accumulated, e.why(), nanos);
            failed(pack, e.why(), nanos);
            failed(clockRatio, e.why(), nanos);
        }
    }

    private void put(Channel channel, long nanos, Source source) {
        try {
            readings[channel.index()] = Reading.of(channel, source.code(), nanos);
        } catch (NoReading e) {
            failed(channel.index(), e.why(), nanos);
        }
    }

    private void failed(int index, Failure why, long nanos) {
        boolean same = readings[index] instanceof Reading.Failed before && before.why() == why;
        if (!same) {
            long since = readings[index] instanceof Reading.Failed before ? before.sinceNanos() : nanos;
            readings[index] = new Reading.Failed(why, since);
        }
    }

    /** Volts, amperes and output state of an instrument, in three neighbouring channels, when it has said something new. */
    private Optional<Answer> answer(InstrumentAgent agent, Optional<Answer> before, int first) {
        Optional<Answer> now = agent.answer();
        if (now.isPresent() && !now.equals(before)) {
            Answer answer = now.get();
            List<Channel> channels = rig.channels();
            set(channels.get(first), answer.volts(), answer.takenNanos());
            set(channels.get(first + 1), answer.amps(), answer.takenNanos());
            set(channels.get(first + 2), answer.on() ? 1 : 0, answer.takenNanos());
        }
        return now;
    }

    private void set(Channel channel, double value, long nanos) {
        readings[channel.index()] = Reading.of(channel, Math.round((value - channel.shift()) / channel.scale()), nanos);
    }

    @Override
    public boolean apply(Orders orders) {
        return outputs.apply(orders);
    }

    @Override
    public void beat(Lease lease) {
        outputs.beat();
    }
}
