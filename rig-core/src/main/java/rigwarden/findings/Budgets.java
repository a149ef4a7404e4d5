package rigwarden.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Budgets of several charges by the same instruments, put together with their signs. */
final class Budgets {
    /** What a log's map states of the instrument that wrote it: the part that grows with the current, and the one that does not. */
    static final String FOREIGN_SCALE = "instrument's scale";
    static final String FOREIGN_ZERO = "instrument's zero";

    /** Terms that are the same part of every charge: of a difference they leave only that part of the difference. */
    private static final Set<String> GAINS = Set.of("shunt tolerance", "amplifier gain", "clock ratio", "chip clock, not learnt",
            "shunt temperature", FOREIGN_SCALE);

    private Budgets() {}

    static boolean isGain(String name) {
        return GAINS.contains(name);
    }

    /** The budget of the sum of these charges, each with its sign: gains cancel where the charges do, offsets add with time. */
    static Budget net(List<StepFinding> steps) {
        Map<String, Double> sums = new LinkedHashMap<>();
        Map<String, Budget.Term> shapes = new LinkedHashMap<>();
        for (StepFinding step : steps) {
            for (Budget.Term term : step.chargeBudget().terms()) {
                double sign = isGain(term.name()) ? Math.signum(step.chargeAmpHours().value()) : 1;
                sums.merge(term.name(), sign * term.standard(), Double::sum);
                shapes.putIfAbsent(term.name(), term);
            }
        }
        List<Budget.Term> terms = new ArrayList<>();
        shapes.forEach((name, shape) ->
                terms.add(new Budget.Term(name, Math.abs(sums.get(name)), shape.freedom(), shape.rectangular())));
        return new Budget(terms);
    }
}
