package rigwarden.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Budgets of several results by the same instruments, put together with their signs. */
final class Budgets {
    /** What a log's map states of the instrument that wrote it: the part that grows with the current, and the one that does not. */
    static final String FOREIGN_SCALE = "instrument's scale";
    static final String FOREIGN_ZERO = "instrument's zero";

    private Budgets() {}

    /** The budget of the sum of these charges, each with its sign: gains cancel where the charges do, offsets add with time. */
    static Budget net(List<StepFinding> steps) {
        Map<String, Budget.Term> sums = new LinkedHashMap<>();
        for (StepFinding step : steps) {
            for (Budget.Term term : step.chargeBudget().terms()) {
                sums.merge(term.name(), term, term.nature().shared() ? Budgets::added : Budgets::bySquares);
            }
        }
        return new Budget(List.copyOf(sums.values()));
    }

    private static Budget.Term added(Budget.Term a, Budget.Term b) {
        return a.sized(a.signed() + b.signed());
    }

    /** Two rectangles make none. */
    private static Budget.Term bySquares(Budget.Term a, Budget.Term b) {
        boolean one = a.standard() == 0 || b.standard() == 0;
        return new Budget.Term(a.name(), Math.hypot(a.standard(), b.standard()), Math.min(a.freedom(), b.freedom()),
                one && a.rectangular() && b.rectangular(), a.nature(), 1, Math.hypot(a.left(), b.left()));
    }

    /**
     * A result of which a ratio is made.
     *
     * @param word what its own terms are called by
     */
    record Part(String word, double value, Budget budget) {
        private Budget.Term own(Budget.Term term) {
            return term.times(1 / value).named(term.name() + ", " + word);
        }

        private Optional<Budget.Term> like(Budget.Term term) {
            return budget.terms().stream().filter(t -> t.name().equals(term.name())).findFirst();
        }
    }

    /**
     * Relative terms of the ratio of two results: of what errs alike in both only the difference of its two parts is left.
     *
     * @param alike which terms do
     */
    static List<Budget.Term> ofRatio(Part over, Part under, Predicate<Budget.Term> alike) {
        List<Budget.Term> terms = new ArrayList<>();
        for (Budget.Term term : over.budget().terms()) {
            terms.add(under.like(term).filter(alike)
                    .map(same -> term.sized(term.signed() / over.value() - same.signed() / under.value()))
                    .orElseGet(() -> over.own(term)));
        }
        under.budget().terms().stream().filter(t -> !alike.test(t) || over.like(t).isEmpty()).forEach(t -> terms.add(under.own(t)));
        return terms;
    }
}
