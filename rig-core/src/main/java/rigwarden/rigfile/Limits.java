package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntChip;
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;

/**
 * The limits in force on a rig, and how soon each acts.
 *
 * @param envelope rows of the envelope as readings on this rig
 * @param governing the governing part with each source and sink
 * @param taps uncertainty of each tap
 * @param reactions each rule's latest reaction, by number
 * @param calibrations what calibrations gave or would give back, in words
 * @param wires wire time of each bus in the fullest scan
 * @param lacking what this rig's parts cannot give, in words
 * @param order who opens first, by quantity
 * @param steps each step of the programme beside its limit; empty without a programme
 */
public record Limits(
        List<Allowed> envelope,
        List<Governing> governing,
        List<TapLimit> taps,
        List<String> calibrations,
        List<Reaction> reactions,
        List<WireTime> wires,
        List<String> lacking,
        List<OpensFirst> order,
        List<String> steps) {
    public Limits {
        envelope = List.copyOf(envelope);
        governing = List.copyOf(governing);
        taps = List.copyOf(taps);
        calibrations = List.copyOf(calibrations);
        reactions = List.copyOf(reactions);
        wires = List.copyOf(wires);
        lacking = List.copyOf(lacking);
        order = List.copyOf(order);
        steps = List.copyOf(steps);
    }

    public static Limits of(Rig rig) {
        return new Limits(Allowed.of(rig), rig.devices().stream().map(device -> Governing.of(rig, device)).toList(),
                TapLimit.of(rig), CalibrationLines.of(rig), Rules.of(rig).stream().map(rule -> Reaction.of(rig, rule)).toList(),
                WireTime.of(rig), lacking(rig), OpensFirst.of(rig, List.of()), List.of());
    }

    public static Limits of(Rig rig, Program program) {
        Limits bare = of(rig);
        List<String> steps = new ArrayList<>();
        for (Step step : program.steps()) {
            steps.add(String.format(Locale.ROOT, "%3d  %s", steps.size() + 1, step(rig, step)));
        }
        return new Limits(bare.envelope, bare.governing, bare.taps, bare.calibrations, bare.reactions, bare.wires, bare.lacking, OpensFirst.of(rig, List.of(program)),
                steps);
    }

    private static List<String> lacking(Rig rig) {
        ShuntChip chip = rig.shunt().chip();
        return chip.accumulates() ? List.of() : List.of("The " + chip + " has no charge accumulator: rule 37, which lays the"
                + " sum of all scans beside the chip's own, is not there, and a charge is the sum of the scans.");
    }

    /**
     * Latest time from the breach at its place to the open contactor.
     *
     * @return seconds; see {@link Reaction}
     */
    public static double reactionSeconds(Rig rig, Rule rule) {
        return Reaction.of(rig, rule).seconds();
    }

    private static String step(Rig rig, Step step) {
        return switch (step) {
            case Step.Charge charge -> current(rig, charge) + held(rig, charge.ceilingVolts()) + ", taper "
                    + Figures.of(charge.taperAmps(), "A");
            case Step.Rest rest -> "rest "
                    + Figures.range(rest.atLeastNanos() / 60e9, rest.atMostNanos() / 60e9, "min");
            case Step.Discharge discharge -> current(rig, discharge) + " to " + Figures.of(discharge.cutOffVolts(), "V");
            case Step.HeatRun run -> current(rig, run) + " to " + Figures.of(run.cutOffVolts(), "V") + ", at most "
                    + Figures.of(run.atMostNanos() / 3600e9, "h");
            case Step.Pulse pulse -> current(rig, pulse) + " after " + Figures.of(pulse.baseAmps(), "A");
            case Step.Balance balance -> current(rig, balance) + held(rig, balance.ceilingVolts()) + ", until "
                    + Figures.of(balance.endAmps(), "A") + " for " + Figures.of(balance.holdNanos() / 60e9, "min");
            case Step.ProveProtection proof -> current(rig, proof) + " towards " + Figures.of(proof.limitVolts(), "V");
            case Step.ProveStop proof -> current(rig, proof) + ", until the " + proof.element().name().toLowerCase(Locale.ROOT) + " alone stops it";
            case Step.Recover recover -> current(rig, recover) + " to " + Figures.of(recover.untilVolts(), "V");
            case Step.Park park -> current(rig, park) + " to " + Figures.of(100 * park.share(), "%")
                    + held(rig, park.ceilingVolts());
        };
    }

    private static String current(Rig rig, Step.Flowing step) {
        Device device = rig.devices().get(step.through());
        Governing governing = Governing.of(rig, device);
        return step.kind().replace('_', ' ') + " " + (device.switched() ? "up to " : "") + Figures.of(step.amps(), "A")
                + " through " + device.name() + " of " + Figures.of(governing.amps(), "A") + " (" + governing.part() + ")";
    }

    private static String held(Rig rig, double volts) {
        return ", at most " + Figures.of(volts, "V") + " + U = "
                + Figures.of(volts + TapLimit.uncertainty(rig, volts), "V") + " in truth";
    }

    /** Everything as text for a person. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("Limits hold for the true value. Readings below already have the uncertainty taken off.");
        lines.add(columns("quantity", "programme may use", "warden trips at a reading", "must last"));
        envelope.forEach(a -> lines.add(
                columns(a.quantity(), a.programme(), a.trips(), Figures.of(a.mustLast(), "s"))));
        lines.add("");
        governing.forEach(g -> lines.add("The " + g.way().name().toLowerCase(Locale.ROOT) + " current through " + g.device()
                + " is governed by " + g.part() + ": " + Figures.of(g.amps(), "A") + "."));
        taps.forEach(t -> lines.add(t.name() + ": U = " + millis(t.uncertaintyVolts(), "mV") + " at 3.65 V"
                + (t.givesBackVolts() > 0 ? "; calibrating it gives back " + millis(t.givesBackVolts(), "mV") : "")
                + "."));
        lines.addAll(calibrations);
        lines.add("");
        lines.add("Latest time from the breach at its place to the open contactor:");
        reactions.forEach(r -> lines.add(String.format(Locale.ROOT, "%3d  %-32s %6.2f s", r.rule().number(),
                r.rule().name(), r.seconds())));
        lines.add("");
        wires.forEach(w -> lines.add(String.format(Locale.ROOT,
                "%s at %d kHz: %.1f ms of wire time in the fullest scan, %.1f %% of it (at most 60 %%).", bus(w),
                w.hertz() / 1000, w.seconds() * 1e3, 100 * w.share())));
        lines.addAll(lacking);
        order.forEach(first -> {
            lines.add("");
            lines.addAll(first.lines());
        });
        if (!steps.isEmpty()) {
            lines.add("");
            lines.addAll(steps);
        }
        return List.copyOf(lines);
    }

    private static String bus(WireTime time) {
        return switch (time.kind()) {
            case I2C -> "Bus " + time.bus();
            case SPI -> "SPI bus " + time.bus();
        };
    }

    private static String columns(String quantity, String programme, String trips, String mustLast) {
        return String.format(Locale.ROOT, "%-30s %-30s %-38s %s", quantity, programme, trips, mustLast);
    }

    private static String millis(double value, String unit) {
        return String.format(Locale.ROOT, "%.1f %s", value * 1e3, unit);
    }
}
