package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.pack.Bead;
import rigwarden.pack.Chance;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.pack.Node;
import rigwarden.pack.World;
import rigwarden.pack.WorldParameters;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.rig.Channels;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;
import rigwarden.rig.VoltageInput;
import rigwarden.run.Account;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * The pack model behind instruments whose errors are drawn from the distributions that the rig states, without chips,
 * buses and drivers in between: quick enough for hundreds of rigs. The model is the truth.
 */
final class ModelRig {
    private static final double OSCILLATOR = 0.005;
    private static final double SHUNT_NOISE_VOLTS = 1.2e-6;
    private static final double TAP_NOISE_VOLTS = 60e-6;
    private static final double PROBE_NOISE_K = 0.03;

    private final Rig rig;
    private final World world;
    private final Consumer<Row> out;
    private final Chance noise;
    private final double shuntGain;
    private final double shuntPerKelvin;
    private final double offsetAmps;
    private final double clock;
    private final double[] inputGain;
    private final double[] inputOffset;
    private final double[] probeKelvin;
    private final List<StepMark> marks = new ArrayList<>();
    private Account account = Account.EMPTY;
    private double lastAmps;
    private double lastVolts;
    private long lastNanos;
    private long number;
    private double past;
    private double drift;

    ModelRig(Rig rig, WorldParameters p, double[] charges, long seed, Consumer<Row> out) {
        this.rig = rig;
        this.out = out;
        world = new World(p.withBeads(rig.probes().stream().map(b -> new Bead(node(b), b.lagSeconds())).toList()), charges);
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        noise = Chance.of(seed, "model rig", "noise");
        Chance drawn = Chance.of(seed, "model rig", "errors");
        shuntGain = (1 + limits(drawn, rig.shunt().toleranceRelative())) * (1 + limits(drawn, Channels.INA228_GAIN));
        shuntPerKelvin = limits(drawn, rig.shunt().perKelvin());
        offsetAmps = (limits(drawn, Channels.INA228_OFFSET_VOLTS) + limits(drawn, rig.shunt().thermoVolts())) / rig.shunt().ohms();
        clock = 1 + limits(drawn, OSCILLATOR);
        inputGain = rig.inputs().stream().mapToDouble(i -> i.calibration().known()
                ? i.calibration().gainU() / 2 * drawn.nextGaussian()
                : limits(drawn, Channels.ADS1115_GAIN) + limits(drawn, i.dividerRelative())).toArray();
        inputOffset = rig.inputs().stream().mapToDouble(i -> i.calibration().known()
                ? i.calibration().offsetU() / 2 * drawn.nextGaussian()
                : limits(drawn, Channels.ADS1115_OFFSET_CODES * Channels.ADS1115_VOLTS) * i.divider()).toArray();
        probeKelvin = rig.probes().stream().mapToDouble(b -> Math.clamp(b.uncertaintyKelvin() / 2 * drawn.nextGaussian(),
                -b.uncertaintyKelvin(), b.uncertaintyKelvin())).toArray();
    }

    private static double limits(Chance chance, double half) {
        return half * (2 * chance.nextDouble() - 1);
    }

    private static Node node(Probe probe) {
        return switch (probe.place()) {
            case STUD -> Node.stud(probe.cell() - 1, probe.positive());
            case BAR -> Node.link(probe.cell());
            case SHUNT_BODY -> Node.SHUNT;
            case CONTACTOR_BODY -> Node.CONTACTOR;
            case ROOM, LOOSE -> Node.ROOM;
            default -> Node.body(probe.cell() - 1);
        };
    }

    World world() {
        return world;
    }

    /** An effect that no budget knows: this share of the current finds a way round the shunt. */
    void round(double share) {
        past = share;
    }

    /** An effect that no budget knows: so many amperes are read where there are none. */
    void drift(double amps) {
        drift = amps;
    }

    void begin(int step, String kind) {
        marks.add(new StepMark.Begun(step, kind));
        step(0.1);
        account = Account.EMPTY;
    }

    void laid(Spot spot) {
        marks.add(new StepMark.Laid(spot));
    }

    void end(Ended by) {
        marks.add(new StepMark.Over(by, true, account));
        step(0.1);
    }

    /** Lives on for a while, a scan in every so many seconds. */
    void live(double seconds, double everySeconds) {
        long end = world.nanos() + Math.round(seconds * 1e9);
        while (world.nanos() < end) {
            step(everySeconds);
        }
    }

    void step(double seconds) {
        pass(seconds);
        scan();
    }

    /** Time passes and nobody looks. */
    void pass(double seconds) {
        world.advanceTo(world.nanos() + Math.round(seconds * 1e9));
    }

    void relay(Line line, boolean closed) {
        world.inflict(closed ? new Fault.Weld(line) : new Fault.StuckOpen(line));
    }

    /** Between the taps of a cell, as it truly is, V. */
    double trueVolts(int cell) {
        return world.tapVolts(cell + 1) - world.tapVolts(cell);
    }

    private void scan() {
        long nanos = world.nanos();
        double[] inputs = new double[rig.inputs().size()];
        long[] codes = new long[inputs.length];
        for (int i = 0; i < inputs.length; i++) {
            VoltageInput input = rig.inputs().get(i);
            Channel channel = rig.column(input.name()).orElseThrow();
            double volts = input.role() == Role.BUS_VOLTS ? world.busVolts()
                    : world.tapVolts(input.cell()) - world.tapVolts(ground(input));
            double read = volts * (1 + inputGain[i]) + inputOffset[i] + TAP_NOISE_VOLTS * input.divider() * noise.nextGaussian();
            codes[i] = Math.round((read - channel.shift()) / channel.scale());
            inputs[i] = channel.value(codes[i]);
        }
        List<Reading> readings = new ArrayList<>(rig.channels().size());
        for (Channel channel : rig.channels()) {
            readings.add(Reading.of(channel, code(channel, inputs, codes), nanos));
        }
        number++;
        integrate(readings, nanos);
        out.accept(new Row(new Scan(number, nanos, readings), List.copyOf(marks)));
        marks.clear();
    }

    private int ground(VoltageInput input) {
        return rig.inputs().stream().filter(i -> i.role() == input.role() && i.bus() == input.bus() && i.address() == input.address())
                .mapToInt(VoltageInput::cell).min().orElseThrow() - 1;
    }

    private long code(Channel channel, double[] inputs, long[] codes) {
        double amps = (1 - past) * world.amps() * shuntGain + offsetAmps + drift;
        return switch (channel.role()) {
            case CURRENT -> Math.round((amps + SHUNT_NOISE_VOLTS / rig.shunt().ohms() * noise.nextGaussian()) / channel.scale());
            case ACCUMULATED -> Math.round(accumulated() / channel.scale());
            case CLOCK_RATIO -> Math.round((clock - 1) / channel.scale());
            case PACK_VOLTS -> Math.round(world.packVolts() / channel.scale());
            case TAP_VOLTS, BUS_VOLTS -> codes[input(channel)];
            case CELL_VOLTS -> cell(channel, inputs, codes);
            case BODY, STUD, BAR, SHUNT_BODY, CONTACTOR_BODY, ROOM, LOOSE -> {
                int probe = rig.probes().stream().map(Probe::name).toList().indexOf(channel.name());
                yield Math.round((world.beadCelsius(probe) + probeKelvin[probe] + PROBE_NOISE_K * noise.nextGaussian()) / channel.scale());
            }
            case LOOP, COIL_FEED, FEEDBACK, ARM -> 1;
            case SOURCE_VOLTS, SOURCE_AMPS, SOURCE_ON, SINK_VOLTS, SINK_AMPS, SINK_ON, RECORDER_LAG, FREE_SPACE, LATENESS -> 0;
        };
    }

    /** Of the chip: its clock is fast where a host's second is more than one of its own. */
    private double accumulated() {
        double through = (1 - past) * (world.coulombs() + shuntPerKelvin * world.coulombKelvins());
        return (through * shuntGain + (offsetAmps + drift) * world.nanos() * 1e-9) / clock;
    }

    private int input(Channel channel) {
        return rig.inputs().stream().map(VoltageInput::name).toList().indexOf(channel.name());
    }

    private long cell(Channel channel, double[] inputs, long[] codes) {
        int direct = input(channel);
        if (direct >= 0) {
            return codes[direct];
        }
        double volts = 0;
        for (int i = 0; i < inputs.length; i++) {
            VoltageInput input = rig.inputs().get(i);
            if (input.role() == Role.TAP_VOLTS && input.cell() == channel.cell()) {
                volts += inputs[i];
            } else if (input.role() == Role.TAP_VOLTS && input.cell() == channel.cell() - 1 && ground(input) == groundOf(channel)) {
                volts -= inputs[i];
            }
        }
        return Math.round(volts / channel.scale());
    }

    private int groundOf(Channel channel) {
        return rig.inputs().stream().filter(i -> i.role() == Role.TAP_VOLTS && i.cell() == channel.cell())
                .mapToInt(this::ground).findFirst().orElseThrow();
    }

    private void integrate(List<Reading> readings, long nanos) {
        double amps = value(readings, rig.channel(Role.CURRENT), lastAmps);
        double volts = rig.channels(Role.CELL_VOLTS).stream().mapToDouble(c -> value(readings, c, 3.3)).sum();
        if (number > 1) {
            account = account.plus(nanos - lastNanos, (amps + lastAmps) / 2, (amps * volts + lastAmps * lastVolts) / 2,
                    (volts + lastVolts) / 2);
        }
        lastAmps = amps;
        lastVolts = volts;
        lastNanos = nanos;
    }

    private static double value(List<Reading> readings, Channel channel, double otherwise) {
        return readings.get(channel.index()) instanceof Reading.Valid valid ? valid.value() : otherwise;
    }
}
