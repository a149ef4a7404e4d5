package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import rigwarden.findings.trace.RestTrail;
import rigwarden.findings.trace.Warmth;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** What cells lose by themselves: by charge over weeks, or ranked by the fall of their rest voltage on a steep end. */
public final class SelfDischarge {
    private static final double LEAST_DAYS = 14;
    private static final double FROM_HOURS = 72;
    private static final double TO_HOURS = 336;
    /** Below the first or above the second a rest voltage tells of charge; between them lies the flat, V (project's assumption). */
    private static final double EMPTY_VOLTS = 3.15;
    private static final double FULL_VOLTS = 3.38;
    /** What the taps may draw from a cell all the time, A (project's assumption). */
    private static final double TAP_AMPS = 20e-6;
    /** On a steep end a cell's voltage falls by this over its whole charge: 100 mV for one percent (project's assumption; check-values 9.1). */
    private static final double STEEP_VOLTS = 10;
    /** Two cells of one state differ by so much in what a kelvin does to them, limits: as much as the entropy's whole range of signs (check-values 9.2). */
    private static final double UNLIKE_VOLTS_PER_K = 0.2e-3;
    /** By so much a place may be warmer where nobody read it, K (project's assumption). */
    private static final double UNKNOWN_K = 10;

    private SelfDischarge() {}

    /**
     * Charge retained (IEC 61960-3, 7.4, from memory): what came out after a long stand over what came out before.
     *
     * @param before capacity, started full
     * @param after what came out after the stand, started from the same full
     * @param days of the stand
     * @param alike which terms of their budgets err alike in both
     */
    static Answer retained(Capacity before, Capacity after, double days, Predicate<Budget.Term> alike) {
        if (days < LEAST_DAYS) {
            return new Answer.Refused(Words.say("%.1f days are too few: a loss of 3 %% a month hides in the uncertainty before 14", days));
        }
        if (before.start() != Capacity.Start.FULL || after.start() != Capacity.Start.FULL || before.lowerBound()) {
            return new Answer.Refused("both must have started full, and the first must have ended at its cut-off");
        }
        double share = after.ampHours().value() / before.ampHours().value();
        List<Budget.Term> terms = new ArrayList<>();
        Budgets.ofRatio(new Budgets.Part("second discharge", after.ampHours().value(), after.budget()),
                        new Budgets.Part("first discharge", before.ampHours().value(), before.budget()), alike)
                .forEach(t -> terms.add(t.times(100 * share)));
        terms.add(Budget.limits("drawn by the taps", 100 * TAP_AMPS * 24 * days / before.ampHours().value()));
        return new Answer.Value(100 * share, "%", new Budget(terms));
    }

    /**
     * What a rest's voltages are read with.
     *
     * @param stepVolts resolution of the readings, V
     * @param ratedAmpHours of a cell
     * @param kelvin by how much the cells were warmer at the second moment than at the first; NaN where nobody knows
     */
    record Reading(double stepVolts, double ratedAmpHours, double kelvin) {}

    /** Of a rest step, with the temperature of its bodies, or of the room where those were not read. */
    static Answer ranking(Traced rig, StepNotes step, double stepVolts) {
        return ranking(step.rest(), new Reading(stepVolts, rig.cells().ratedAmpHours(), warmer(step.warmth())));
    }

    /** Ranking by the fall of the rest voltage between the third day and the fourteenth, fastest first. */
    static Answer ranking(RestTrail rest, Reading by) {
        int from = at(rest.hours(), FROM_HOURS);
        int to = at(rest.hours(), TO_HOURS);
        if (from < 0 || to < 0) {
            return new Answer.Refused("the rest did not last from the third day to the fourteenth");
        }
        List<Integer> cells = new ArrayList<>(IntStream.range(0, rest.volts().length).boxed().toList());
        for (int cell : cells) {
            double volts = rest.volts()[cell][to];
            if (Double.isNaN(volts) || Double.isNaN(rest.volts()[cell][from])) {
                return new Answer.Refused(Words.say("cell %d was not read on the third day and on the fourteenth", cell + 1));
            }
            if (volts > EMPTY_VOLTS && volts < FULL_VOLTS) {
                return new Answer.Refused(Words.say("cell %d stands at %.3f V, on the flat, where a voltage tells nothing of charge",
                        cell + 1, volts));
            }
        }
        if (cells.size() < 2) {
            return new Answer.Refused("one cell alone has no rank");
        }
        double[] fall = cells.stream().mapToDouble(cell -> rest.volts()[cell][from] - rest.volts()[cell][to]).toArray();
        cells.sort(Comparator.comparingDouble(cell -> -fall[cell]));
        int first = cells.get(0);
        int second = cells.get(1);
        Budget budget = ofDifference(rest, first, second, from, to, by);
        String order = String.join(", ", cells.stream().map(c -> Words.say("cell %d %.1f mV", c + 1, 1000 * fall[c])).toList());
        String known = Words.say("%.1f mV between the first two, ± %.1f mV (largest: %s)", 1000 * (fall[first] - fall[second]),
                1000 * budget.expanded(), budget.largest().name());
        return fall[first] - fall[second] > budget.expanded()
                ? new Answer.Named("cell " + (first + 1), "fell fastest from day 3 to day 14: " + order + "; " + known)
                : new Answer.CannotTell("the first two of " + order, known);
    }

    /** Of the difference of two cells' falls, V: four readings, and what makes a cell fall or rise besides its own loss. */
    private static Budget ofDifference(RestTrail rest, int first, int second, int from, int to, Reading by) {
        double noise = Math.hypot(scatter(rest.volts()[first], from, to), scatter(rest.volts()[second], from, to));
        double kelvin = Double.isNaN(by.kelvin()) ? UNKNOWN_K : Math.abs(by.kelvin());
        double drawn = TAP_AMPS * (rest.hours()[to] - rest.hours()[from]) / by.ratedAmpHours();
        return new Budget(List.of(
                new Budget.Term("noise of the hourly means", Math.sqrt(2) * noise, Math.max(1, to - from - 1)),
                Budget.standard("resolution", by.stepVolts() * Math.sqrt(4 / 12.0)),
                Budget.limits("temperature between the two days", UNLIKE_VOLTS_PER_K * kelvin),
                Budget.limits("drawn by the taps", drawn * STEEP_VOLTS)));
    }

    /** Standard deviation of one hourly mean, from those that follow each other: a steady fall is not in it. */
    private static double scatter(double[] volts, int from, int to) {
        double[] steps = IntStream.range(from, to).mapToDouble(i -> volts[i + 1] - volts[i]).filter(d -> !Double.isNaN(d)).toArray();
        double mean = Arrays.stream(steps).average().orElse(0);
        return steps.length < 2 ? 0 : Math.sqrt(Arrays.stream(steps).map(d -> (d - mean) * (d - mean)).sum() / (steps.length - 1) / 2);
    }

    private static double warmer(List<Warmth> warmth) {
        double bodies = warmer(warmth, Role.BODY);
        return Double.isNaN(bodies) ? warmer(warmth, Role.ROOM) : bodies;
    }

    /** The most by which a place of this role was warmer or colder on the fourteenth day than on the third, K; NaN where none was read. */
    private static double warmer(List<Warmth> warmth, Role role) {
        return warmth.stream().filter(w -> w.where().role() == role).filter(w -> at(w.hours(), FROM_HOURS) >= 0 && at(w.hours(), TO_HOURS) >= 0)
                .mapToDouble(w -> Math.abs(w.celsius()[at(w.hours(), TO_HOURS)] - w.celsius()[at(w.hours(), FROM_HOURS)]))
                .filter(k -> !Double.isNaN(k)).max().orElse(Double.NaN);
    }

    private static int at(double[] hours, double hour) {
        for (int i = 0; i < hours.length; i++) {
            if (hours[i] >= hour - 0.51 && hours[i] <= hour + 2) {
                return i;
            }
        }
        return -1;
    }
}
