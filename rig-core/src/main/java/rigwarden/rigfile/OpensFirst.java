package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Guards;
import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;
import rigwarden.warden.Rules;

/**
 * Who stops a quantity, in the order in which they would: programme, warden, source and sink, the battery's own protection,
 * hardware that works with the computer dead, fuse. Worked out from what the files state; a proof on the rig comes besides.
 *
 * @param quantity what goes wrong, for example "cell high"
 * @param unit of the values
 * @param openers in order of opening
 * @param words what is wrong with that order, in plain words; empty when nothing is
 */
public record OpensFirst(String quantity, String unit, List<Opener> openers, List<String> words) {
    private static final double CONTACT_S = 0.35;
    /** A rating is no threshold: a little above it nothing opens for hours. */
    private static final double HOUR_S = 3600;

    public OpensFirst {
        openers = List.copyOf(openers);
        words = List.copyOf(words);
    }

    /**
     * One of them.
     *
     * @param who in the project's words
     * @param value at which it acts, in truth, nominal
     * @param tolerance limits ± of that, same unit
     * @param seconds until it has acted, at the latest
     * @param alone whether it works with the computer dead
     */
    public record Opener(String who, double value, double tolerance, double seconds, boolean alone) {}

    /** Every quantity of this rig, with the programme's own ends where there is one. */
    public static List<OpensFirst> of(Rig rig, List<Program> programme) {
        List<Step> steps = programme.stream().flatMap(p -> p.steps().stream()).toList();
        List<OpensFirst> all = new ArrayList<>();
        all.add(high(rig, highest(steps)));
        all.add(low(rig, lowest(steps)));
        rig.devices().forEach(device -> all.add(current(rig, device)));
        return List.copyOf(all);
    }

    private static OptionalDouble highest(List<Step> steps) {
        return steps.stream().flatMapToDouble(step -> switch (step) {
            case Step.Charge s -> DoubleStream.of(s.ceilingVolts());
            case Step.Park s -> DoubleStream.of(s.ceilingVolts());
            case Step.Balance s -> DoubleStream.of(s.ceilingVolts());
            case Step.Rest _, Step.Discharge _, Step.HeatRun _, Step.Pulse _, Step.ProveProtection _, Step.Recover _, Step.ProveStop _ ->
                DoubleStream.empty();
        }).max();
    }

    private static OptionalDouble lowest(List<Step> steps) {
        return steps.stream().flatMapToDouble(step -> switch (step) {
            case Step.Discharge s -> DoubleStream.of(s.cutOffVolts());
            case Step.HeatRun s -> DoubleStream.of(s.cutOffVolts());
            case Step.Rest _, Step.Charge _, Step.Park _, Step.Balance _, Step.Pulse _, Step.ProveProtection _,
                    Step.Recover _, Step.ProveStop _ -> DoubleStream.empty();
        }).min();
    }

    private static OpensFirst high(Rig rig, OptionalDouble programme) {
        double u = TapLimit.uncertainty(rig, Envelope.CEILING_V);
        List<Opener> openers = new ArrayList<>();
        programme.ifPresent(volts -> openers.add(new Opener("programme's ceiling", volts, u, 0, false)));
        openers.add(new Opener("warden, rule 1", rig.guards().trips().cellHighVolts() - u, u, reaction(rig, 1), false));
        rig.devices(true).forEach(source -> openers.add(new Opener(source.name() + "'s own limit, per cell of equal cells",
                source.highestVolts() / rig.cells().series(), 0, 0, true)));
        hardware(rig, openers, true);
        openers.sort(Comparator.comparingDouble(Opener::value));
        List<String> words = new ArrayList<>();
        nobody(rig, openers, words, "Nobody stops a cell that goes high with the computer dead.");
        rig.protection().ifPresent(p -> programme.ifPresent(volts -> {
            if (p.highVolts() - p.toleranceVolts() < volts + u) {
                words.add("The battery's protection may open before the programme's ceiling: the step would end by it.");
            }
        }));
        return new OpensFirst("cell high", "V", openers, words);
    }

    private static OpensFirst low(Rig rig, OptionalDouble programme) {
        double u = TapLimit.uncertainty(rig, Envelope.CUT_OFF_V);
        List<Opener> openers = new ArrayList<>();
        programme.ifPresent(volts -> openers.add(new Opener("programme's cut-off", volts, u, 1, false)));
        openers.add(new Opener("warden, rule 2", rig.guards().trips().cellLowVolts() + u, u, reaction(rig, 2), false));
        for (Device sink : rig.devices(false)) {
            if (sink instanceof Device.Inverter inverter) {
                openers.add(new Opener(sink.name() + " quits, per cell of equal cells",
                        inverter.quitVolts() / rig.cells().series(), 0, 1, true));
            }
        }
        hardware(rig, openers, false);
        openers.sort(Comparator.comparingDouble(Opener::value).reversed());
        List<String> words = new ArrayList<>();
        nobody(rig, openers, words, "Nobody stops a cell that goes low with the computer dead.");
        rig.protection().ifPresent(p -> programme.ifPresent(volts -> {
            if (p.lowVolts() + p.toleranceVolts() > volts - u) {
                words.add("The battery's protection may open before the programme's cut-off: the step would end by it.");
            }
        }));
        return new OpensFirst("cell low", "V", openers, words);
    }

    private static void hardware(Rig rig, List<Opener> openers, boolean high) {
        rig.protection().ifPresent(p -> openers.add(new Opener("battery's protection",
                high ? p.highVolts() : p.lowVolts(), p.toleranceVolts(), p.delaySeconds(), true)));
        Guards guards = rig.guards();
        if (guards.windowFitted()) {
            openers.add(new Opener("hardware window", high ? guards.windowHighVolts() : guards.windowLowVolts(), 0,
                    guards.contactLagSeconds() + CONTACT_S, true));
        }
    }

    /** An equal split between cells is no limit of one cell; a window or a protection that looks at each cell is. */
    private static void nobody(Rig rig, List<Opener> openers, List<String> words, String sentence) {
        boolean each = rig.protection().isPresent() || rig.guards().windowFitted();
        boolean single = rig.cells().series() == 1 && openers.stream().anyMatch(Opener::alone);
        if (!each && !single) {
            words.add(sentence);
        }
    }

    private static OpensFirst current(Rig rig, Device device) {
        List<Opener> openers = new ArrayList<>();
        Governing governing = Governing.of(rig, device);
        openers.add(new Opener("governed by " + governing.part(), governing.amps(), 0, 0, false));
        openers.add(new Opener("warden, rule 11", 1.1 * governing.amps() + Envelope.NO_CURRENT_A, 0, reaction(rig, 11),
                false));
        openers.add(new Opener("warden, rule 12", 1.5 * governing.amps() + Envelope.NO_CURRENT_A, 0, reaction(rig, 12),
                false));
        openers.add(new Opener(device.name() + " gives no more", device.maxAmps(), 0, 0, true));
        rig.protection().ifPresent(p ->
                openers.add(new Opener("battery's protection, in hours", p.ratedAmps(), 0, HOUR_S, true)));
        for (PathPart part : rig.path()) {
            if (part.kind() == PathPart.Kind.FUSE && (part.common() || part.device().equals(device.name()))) {
                openers.add(new Opener(part.name() + ", in hours", part.ratedAmps(), 0, HOUR_S, true));
            }
        }
        openers.sort(Comparator.comparingDouble(Opener::value));
        return new OpensFirst("current through " + device.name(), "A", openers, List.of());
    }

    private static double reaction(Rig rig, int rule) {
        return Rules.of(rig).stream().filter(r -> r.number() == rule)
                .mapToDouble(r -> Reaction.of(rig, r).seconds()).findFirst().orElse(0);
    }

    /** The table for a person. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("Who opens first: " + quantity);
        int place = 1;
        for (Opener opener : openers) {
            lines.add(String.format(Locale.ROOT, "  %d. %-44s %10s %-11s within %7.2f s%s", place++, opener.who(),
                    Figures.of(round(opener.value()), unit),
                    opener.tolerance() > 0 ? "± " + Figures.of(round(opener.tolerance()), unit) : "", opener.seconds(),
                    opener.alone() ? ", with the computer dead too" : ""));
        }
        words.forEach(word -> lines.add("  " + word));
        return lines;
    }

    private static double round(double value) {
        return Math.round(value * 1e3) / 1e3;
    }
}
