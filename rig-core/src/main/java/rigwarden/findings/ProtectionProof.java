package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Edge;
import rigwarden.program.Ended;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** Where the battery's own protection really opens: the outermost cell just before and just after it did. */
public final class ProtectionProof {
    /** An approach that came so far without an opening is a finding of its own, V. */
    private static final double FAR_VOLTS = 3.69;

    private ProtectionProof() {}

    /**
     * One opening.
     *
     * @param before of the highest cell on charge, of the lowest on discharge, under current, V
     * @param after of the same cell in the first scans without, V
     * @param voltsPerSecond how fast it went there
     * @param amps current before
     * @param scan of the opening
     * @param cell which cell it was, from 1
     * @param expandedVolts what its voltmeter may be wrong by there, V
     * @param noiseVolts standard deviation of the voltage before, V
     */
    public record Bracket(double before, double after, double voltsPerSecond, double amps, long scan, int cell, double expandedVolts,
            double noiseVolts) {
        Answer answer() {
            return new Answer.Between(Math.min(before, after) - expandedVolts, Math.max(before, after) + expandedVolts, "V",
                    Words.say("the %s cell around the opening, at %.3f mV/s, with the ± %.1f mV of its voltmeter", amps > 0 ? "highest" : "lowest",
                            1000 * voltsPerSecond, 1000 * expandedVolts));
        }
    }

    static List<Finding> of(Traced rig, Gathered run) {
        List<Finding> found = new ArrayList<>();
        List<Bracket> high = new ArrayList<>();
        List<Bracket> low = new ArrayList<>();
        for (StepNotes step : run.steps()) {
            boolean proving = step.sums().kind().equals("prove_protection");
            if (step.sums().by() == Ended.PROTECTION) {
                Optional<Edge> opening = opening(run, step);
                Optional<Bracket> bracket = opening.flatMap(edge -> bracket(rig, edge));
                bracket.ifPresent(b -> (b.amps() > 0 ? high : low).add(b));
                found.add(finding(step, bracket.map(Bracket::answer).orElseGet(() -> new Answer.Refused(opening.isEmpty()
                        ? "it opened, but the current had not stood still before"
                        : "it opened, but not every cell was read just before and after: one of those may have been the outermost"))));
            } else if (proving) {
                found.add(finding(step, step.sums().highest().value() >= FAR_VOLTS && step.knees().endAmps() > 0
                        ? new Answer.Named("not opened", Words.say("the highest cell came to %.3f V and the protection did not open",
                                step.sums().highest().value()))
                        : new Answer.Refused("the approach ended before the protection could open")));
            }
        }
        threshold(high).ifPresent(answer -> found.add(both(high, answer)));
        threshold(low).ifPresent(answer -> found.add(both(low, answer)));
        return found;
    }

    private static Optional<Edge> opening(Gathered run, StepNotes step) {
        return run.edges().stream()
                .filter(e -> e.step() == step.sums().index() && e.opened() && e.scan() >= step.continuity().firstScan())
                .reduce((_, last) -> last);
    }

    /** Nothing where a cell was not read, since it may have been that one. */
    private static Optional<Bracket> bracket(Traced rig, Edge edge) {
        boolean charging = edge.before().amps() > 0;
        double[] volts = edge.before().volts();
        double[] after = edge.after().getFirst().volts();
        int cell = 0;
        for (int i = 0; i < volts.length; i++) {
            if (Double.isNaN(volts[i]) || Double.isNaN(after[i])) {
                return Optional.empty();
            }
            cell = (charging ? volts[i] > volts[cell] : volts[i] < volts[cell]) ? i : cell;
        }
        return Optional.of(new Bracket(volts[cell], after[cell], edge.fallVoltsPerSecond()[cell], edge.before().amps(), edge.scan(), cell + 1,
                rig.channels(Role.CELL_VOLTS).get(cell).uncertainty(volts[cell]), edge.extrapolation() * edge.noiseVolts()[cell]));
    }

    /**
     * The threshold itself, from openings at two rates: the delay lets a quicker cell go farther before it opens.
     *
     * <p>One voltmeter errs alike in both; two may err against each other.
     *
     * @return nothing from openings at one rate only
     */
    public static Optional<Answer> threshold(List<Bracket> openings) {
        if (openings.size() < 2) {
            return Optional.empty();
        }
        Bracket a = openings.getFirst();
        Bracket b = openings.getLast();
        double rates = b.voltsPerSecond() - a.voltsPerSecond();
        if (Math.abs(rates) < 0.2 * Math.max(Math.abs(a.voltsPerSecond()), Math.abs(b.voltsPerSecond()))) {
            return Optional.empty();
        }
        double delay = (b.before() - a.before()) / rates;
        double volts = a.before() - delay * a.voltsPerSecond();
        double reading = Arrays.stream(new double[] {a.voltsPerSecond(), b.voltsPerSecond()}).map(Math::abs).max().orElse(0) * 0.1;
        double lever = (Math.abs(a.voltsPerSecond()) + Math.abs(b.voltsPerSecond())) / Math.abs(rates);
        double ofA = b.voltsPerSecond() / rates;
        double ofB = -a.voltsPerSecond() / rates;
        double taps = a.cell() == b.cell() ? Math.max(a.expandedVolts(), b.expandedVolts())
                : Math.abs(ofA) * a.expandedVolts() + Math.abs(ofB) * b.expandedVolts();
        return Optional.of(new Answer.Value(volts, "V", new Budget(List.of(
                Budget.limits("instant of the opening", reading * lever),
                Budget.standard("voltage taps", taps / 2),
                Budget.standard("noise of the taps", Math.hypot(ofA * a.noiseVolts(), ofB * b.noiseVolts()))))));
    }

    private static Finding both(List<Bracket> openings, Answer answer) {
        return new Finding(Kind.PROTECTION, openings.getFirst().amps() > 0 ? "threshold on charge" : "threshold on discharge",
                answer, List.of("from two rates, its delay taken off"), List.of(NOT_PROVED), openings.getFirst().scan(),
                openings.getLast().scan());
    }

    private static final String NOT_PROVED = "that it opens on over-current and on temperature is not proved by this";

    private static Finding finding(StepNotes step, Answer answer) {
        return new Finding(Kind.PROTECTION, Words.step(step.sums()), answer, Conditions.of(step), List.of(NOT_PROVED),
                step.continuity().firstScan(), step.continuity().lastScan());
    }
}
