package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * What one run gave more than an earlier one, with the uncertainty of the difference (JCGM 100:2008, 5.2: correlated parts are added as
 * they are, with their signs).
 *
 * @param value later less earlier
 * @param budget of the difference, in the same unit
 * @param alike terms that err alike in both and of which only the part of the difference is left
 */
record Difference(double value, Budget budget, List<String> alike) {
    /**
     * What shunt, amplifier and taps keep from one run to another: limits ±, relative (this project's assumption; a calibration is
     * believed to 20 ppm from day to day, and months lie between two runs).
     */
    static final double DRIFT = 0.0002;

    Difference {
        alike = List.copyOf(alike);
    }

    /**
     * Of two values by budgets of the same method.
     *
     * @param shared which terms err alike
     * @param more terms that belong to the comparison alone
     */
    static Difference of(double earlier, Budget before, double later, Budget after, Shared shared, List<Budget.Term> more) {
        List<Budget.Term> terms = new ArrayList<>();
        List<String> alike = new ArrayList<>();
        for (Budget.Term term : before.terms()) {
            Optional<Budget.Term> other = named(after, term.name());
            if (shared.alike(term) && other.isPresent()) {
                alike.add(term.name());
                terms.add(term.sized(other.get().signed() - term.signed()));
            } else {
                terms.add(term.named(term.name() + ", then"));
            }
        }
        after.terms().stream().filter(t -> !alike.contains(t.name())).forEach(t -> terms.add(t.named(t.name() + ", later")));
        if (!alike.isEmpty()) {
            terms.add(Budget.limits("drift of the instruments between the runs", DRIFT * Math.abs(later)));
        }
        terms.addAll(more);
        return new Difference(later - earlier, new Budget(terms), alike);
    }

    private static Optional<Budget.Term> named(Budget budget, String name) {
        return budget.terms().stream().filter(t -> t.name().equals(name)).findFirst();
    }

    /** The same with a part of it explained, which is taken off. */
    Difference less(double explained) {
        return new Difference(value - explained, budget, alike);
    }

    /**
     * The least that would have been seen. Where several places are looked at together each must stand out the more, so that
     * chance alone names none of them more often than one of a single place.
     *
     * @param places looked at together, from 1
     */
    double least(int places) {
        double outside = (1 - Budget.COVERAGE) / 2 / places;
        return Math.max(budget.expanded(), -budget.combined() * new NormalDistribution(0, 1).inverseCumulativeProbability(outside));
    }
}
