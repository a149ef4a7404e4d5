package rigwarden.paper;

import java.util.List;
import rigwarden.findings.Budget;

/** What a person can do about the largest term of a budget. */
final class Shrinking {
    private Shrinking() {}

    /** For example "calibrate the shunt: ± 0.27 → ± 0.06 Ah at best". */
    static String of(Budget budget, String unit) {
        Budget.Term largest = budget.largest();
        List<Budget.Term> others = budget.terms().stream().filter(t -> !t.equals(largest)).toList();
        double left = others.isEmpty() ? 0 : new Budget(others).expanded();
        return Spots.say("%s: ± %s → ± %s %s at best", how(largest.name()), Figures.plain(budget.expanded()), Figures.plain(left), unit).strip();
    }

    private static String how(String term) {
        return switch (term) {
            case "shunt tolerance" -> "calibrate the shunt";
            case "shunt temperature" -> "keep the shunt cooler, or take a larger one";
            case "amplifier gain" -> "calibrate the shunt together with its amplifier";
            case "amplifier offset", "thermo-electric voltage" -> "take the current's zero before and after";
            case "clock ratio", "chip clock, not learnt" -> "let the chip's clock be learnt longer, at rest, before the step";
            case "accumulator not followed", "unseen until it was open", "drained in the outage", "recovered by the rest" ->
                "run it again without an interruption";
            case "tap at the cut-off", "tap gain", "voltage taps", "voltage of the bus" -> "calibrate the voltage taps";
            case "noise and rounding of the taps", "each reading" -> "use a larger step of the current";
            case "instant of the reading" -> "scan faster";
            case "temperature coefficient" -> "test at the rating's temperature";
            case "missing from full" -> "charge to the taper before";
            case "probe" -> "calibrate the probe";
            case String other -> "look at \"" + other + "\"";
        };
    }
}
