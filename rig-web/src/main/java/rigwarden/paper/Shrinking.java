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
        return Spots.say("%s: ± %s → ± %s %s at best", how(largest), Figures.plain(budget.expanded()), Figures.plain(left), unit).strip();
    }

    private static String how(Budget.Term term) {
        return switch (term.nature()) {
            case GAIN -> gain(term.name());
            case WARMTH -> "keep the shunt cooler, or take a larger one";
            case CLOCK -> "let the chip's clock be learnt longer, at rest, before the step";
            case OFFSET, WANDERING -> zero(term.name());
            case TAPS -> "calibrate the voltage taps";
            case OWN -> own(term.name());
        };
    }

    private static String gain(String term) {
        return switch (term) {
            case "shunt tolerance" -> "calibrate the shunt";
            case "amplifier gain", "shunt and amplifier gain" -> "calibrate the shunt together with its amplifier";
            case "the calibration's slope" -> "calibrate again, with points farther apart";
            case "beyond the calibrated span" -> "calibrate up to this current";
            case "reference meter's scale", "shunt's certificate", "the current's calibration" -> "calibrate with a better reference";
            case String other -> look(other);
        };
    }

    private static String zero(String term) {
        return switch (term) {
            case "amplifier offset", "the calibration's line", "reference meter's zero, drift" ->
                "let it rest before and after, so that the current's zero is read with the contactor open";
            case "current between the readings" -> "take a sensor that counts by itself";
            case String other -> look(other);
        };
    }

    private static String own(String term) {
        return switch (term) {
            case "accumulator not followed", "unseen until it was open", "drained in the outage", "recovered by the rest" ->
                "run it again without an interruption";
            case "voltage taps", "voltage of the bus" -> "calibrate the voltage taps";
            case "noise and rounding of the taps", "each reading" -> "use a larger step of the current";
            case "instant of the reading" -> "scan faster";
            case "temperature coefficient" -> "test at the rating's temperature";
            case "missing from full" -> "charge to the taper before";
            case "probe" -> "calibrate the probe";
            case String other -> look(other);
        };
    }

    private static String look(String term) {
        return "look at \"" + term + "\"";
    }
}
