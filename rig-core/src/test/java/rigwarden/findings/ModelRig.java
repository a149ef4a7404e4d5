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
    private static final double SHUNT_NOISE_VOLTS = 1.2e-6;
    private static final double TAP_NOISE_VOLTS = 60e-6;
    private static final double PROBE_NOISE_K = 0.03;

    private final Rig rig;
    private final World world;
    private final Consumer<Row> out;
    private final Chance noise;
    private final RigErrors errors;
    private final List<StepMark> marks = new ArrayList<>();
    private final Wrong wrong = new Wrong();
    /** The channels as the chips' codes are, before any calibration. */
    private final List<Channel> bare;
    private Account account = Account.EMPTY;
    private double lastAmps;
    private double lastVolts;
    private long lastNanos;
    private long number;

    ModelRig(Rig rig, WorldParameters p, double[] charges, long seed, Consumer<Row> out) {
        this.rig = rig;
        this.out = out;
        world = new World(p.withBeads(rig.probes().stream().map(b -> new Bead(node(b), b.lagSeconds())).toList()), charges);
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        noise = Chance.of(seed, "model rig", "noise");
        errors = RigErrors.of(rig, Chance.of(seed, "model rig", "errors"));
        bare = rig.calibrated(List.of()).channels();
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

    /** Current in the last scan, A. */
    double readAmps() {
        return lastAmps;
    }

    /** What is wrong and nobody tells. */
    Wrong wrong() {
        return wrong;
    }

    void begin(int step, String kind) {
        marks.add(new StepMark.Begun(step, kind));
        step(0.1);
        account = Account.EMPTY;
    }

    /** Its scans are counted from the first again. */
    void anew() {
        number = 0;
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
                    : world.tapVolts(input.cell()) - world.tapVolts(ground(input)) + wrong.upTheBar(input.cell(), world.amps());
            double read = volts * (1 + errors.inputGain()[i]) + errors.inputOffset()[i] + TAP_NOISE_VOLTS * input.divider() * noise.nextGaussian();
            codes[i] = code(channel, read);
            inputs[i] = channel.value(codes[i]);
        }
        List<Reading> readings = new ArrayList<>(rig.channels().size());
        for (Channel channel : rig.channels()) {
            readings.add(Reading.of(channel, codeOf(channel, inputs, codes), nanos));
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

    /** What the chip gives for a bare reading. */
    private long code(Channel channel, double value) {
        Channel chip = bare.get(channel.index());
        return Math.round((value - chip.shift()) / chip.scale());
    }

    private long codeOf(Channel channel, double[] inputs, long[] codes) {
        double amps = (1 + wrong.samples) * (1 - wrong.past) * world.amps() * errors.shuntGain() + errors.offsetAmps() + wrong.driftAmps;
        return switch (channel.role()) {
            case CURRENT -> code(channel, amps + SHUNT_NOISE_VOLTS / rig.shunt().ohms() * noise.nextGaussian());
            case ACCUMULATED -> code(channel, accumulated());
            case CLOCK_RATIO -> code(channel, errors.learnt() * (1 + wrong.clock));
            case PACK_VOLTS -> Math.round(world.packVolts() / channel.scale());
            case TAP_VOLTS, BUS_VOLTS -> codes[input(channel)];
            case CELL_VOLTS -> cell(channel, inputs, codes);
            case BODY, STUD, BAR, SHUNT_BODY, CONTACTOR_BODY, ROOM, LOOSE -> {
                int probe = rig.probes().stream().map(Probe::name).toList().indexOf(channel.name());
                yield Math.round((world.beadCelsius(probe) + errors.probeKelvin()[probe] + PROBE_NOISE_K * noise.nextGaussian()) / channel.scale());
            }
            case LOOP, COIL_FEED, FEEDBACK, ARM -> 1;
            case SOURCE_AMPS -> code(channel, world.sourceAmps(0) * (1 + errors.meterGain()[channel.index()]));
            case SINK_AMPS -> code(channel, world.sinkAmps(0) * (1 + errors.meterGain()[channel.index()]));
            case SOURCE_VOLTS, SOURCE_ON, SINK_VOLTS, SINK_ON, RECORDER_LAG, FREE_SPACE, LATENESS -> 0;
        };
    }

    /** Of the chip: its clock is fast where a host's second is more than one of its own. */
    private double accumulated() {
        double through = (1 + wrong.count) * (1 - wrong.past) * (world.coulombs() + (errors.shuntPerKelvin() + wrong.perKelvin) * world.coulombKelvins());
        return (through * errors.shuntGain() + (errors.offsetAmps() + wrong.driftAmps) * world.nanos() * 1e-9) / errors.clock();
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
