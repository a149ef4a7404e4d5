package rigwarden.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import rigwarden.findings.trace.RestTrail;

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
     * Ranking by the fall of the rest voltage between the third day and the fourteenth, fastest first.
     *
     * @param rest hourly
     * @param stepVolts resolution of the readings, V
     */
    public static Answer ranking(RestTrail rest, double stepVolts) {
        int from = at(rest, FROM_HOURS);
        int to = at(rest, TO_HOURS);
        if (from < 0 || to < 0) {
            return new Answer.Refused("the rest did not last from the third day to the fourteenth");
        }
        List<Integer> cells = new ArrayList<>(IntStream.range(0, rest.volts().length).boxed().toList());
        for (int cell : cells) {
            double volts = rest.volts()[cell][to];
            if (Double.isNaN(volts) || volts > EMPTY_VOLTS && volts < FULL_VOLTS) {
                return new Answer.Refused(Words.say("cell %d stands at %.3f V, on the flat, where a voltage tells nothing of charge",
                        cell + 1, volts));
            }
        }
        cells.sort(Comparator.comparingDouble(cell -> rest.volts()[cell][to] - rest.volts()[cell][from]));
        int fastest = cells.getFirst();
        double fall = rest.volts()[fastest][from] - rest.volts()[fastest][to];
        double next = cells.size() < 2 ? 0 : rest.volts()[cells.get(1)][from] - rest.volts()[cells.get(1)][to];
        String order = String.join(", ", cells.stream().map(c -> Words.say("cell %d %.1f mV", c + 1,
                1000 * (rest.volts()[c][from] - rest.volts()[c][to]))).toList());
        return fall - next > 2 * stepVolts
                ? new Answer.Named("cell " + (fastest + 1), "fell fastest from day 3 to day 14: " + order)
                : new Answer.CannotTell("the first two of " + order, "they differ by less than two steps of the readings");
    }

    private static int at(RestTrail rest, double hours) {
        for (int i = 0; i < rest.hours().length; i++) {
            if (rest.hours()[i] >= hours - 0.51 && rest.hours()[i] <= hours + 2) {
                return i;
            }
        }
        return -1;
    }
}
