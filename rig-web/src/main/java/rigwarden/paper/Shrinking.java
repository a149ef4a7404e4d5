package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rigwarden.findings.Budget;

/**
 * What a person can do about the largest term of a budget, and what would be left then. What a cure leaves is the project's assumption,
 * but for a term that says it itself.
 */
final class Shrinking {
    /** With less gained it is not worth a person's while. */
    private static final double WORTH = 0.95;

    private Shrinking() {}

    /**
     * A cure.
     *
     * @param what to do
     * @param terms that it does away with
     * @param share of each term that it leaves
     * @param ofValue limits ± that it leaves instead of all of them together, relative to the value
     */
    private record Cure(String what, Set<String> terms, double share, double ofValue) {
        /** A term by its name; of one result of several it has that behind a comma. */
        boolean cures(String term) {
            int comma = term.lastIndexOf(", ");
            return terms.contains(term) || comma > 0 && terms.contains(term.substring(0, comma));
        }
    }

    private static final List<Cure> CURES = List.of(
            new Cure("calibrate the shunt", Set.of("shunt tolerance"), 0, 1e-3),
            new Cure("calibrate the shunt together with its amplifier", Set.of("amplifier gain", "shunt and amplifier gain"), 0, 1e-3),
            new Cure("calibrate the instrument that wrote the log", Set.of("instrument's scale"), 0, 1e-3),
            new Cure("calibrate with a better reference", Set.of("reference meter's scale", "shunt's certificate", "the current's calibration"), 0.5, 0),
            new Cure("calibrate again, with points farther apart", Set.of("the calibration's slope"), 0.5, 0),
            new Cure("calibrate up to this current", Set.of("beyond the calibrated span"), 0.2, 0),
            new Cure("keep the shunt cooler, or take a larger one", Set.of("shunt temperature"), 0.5, 0),
            new Cure("let it rest before and after, so that the current's zero is read with the contactor open", Set.of("amplifier offset",
                    "thermo-electric voltage", "the calibration's line", "reference meter's zero, drift"), 0.2, 0),
            new Cure("find the zero of the instrument that wrote the log, and state it in the map", Set.of("instrument's zero"), 0.2, 0),
            new Cure("take a sensor that counts by itself", Set.of("current between the readings"), 0, 0),
            new Cure("let the chip's clock be learnt longer, at rest, before the step", Set.of("clock ratio"), 0.5, 0),
            new Cure("let the chip's clock be learnt longer, at rest, before the step", Set.of("chip clock, not learnt"), 0, 4e-5),
            new Cure("run it again without an interruption", Set.of("accumulator not followed", "unseen until it was open",
                    "drained in the outage", "recovered by the rest"), 0, 0),
            new Cure("calibrate the voltage taps", Set.of("tap at the cut-off", "tap gain", "voltage taps", "voltage of the bus"), 0.2, 0),
            new Cure("use a larger step of the current", Set.of("noise and rounding of the taps", "each reading"), 0.5, 0),
            new Cure("scan faster", Set.of("instant of the reading"), 0.5, 0),
            new Cure("test at the rating's temperature", Set.of("temperature coefficient"), 0.5, 0),
            new Cure("calibrate the probes on the cells", Set.of("temperature of the cells"), 0.3, 0),
            new Cure("charge to the taper before", Set.of("missing from full"), 0, 0),
            new Cure("let nothing but a rest lie between full and the discharge", Set.of("put in after full"), 0, 0),
            new Cure("charge to a lower taper both times", Set.of("two full ends alike"), 0.5, 0),
            new Cure("test both at one temperature of the cells", Set.of("temperature between the two"), 0, 0),
            new Cure("take rows closer together", Set.of("instant of the step", "between the rows of two pulses", "rows missing"), 0.5, 0),
            new Cure("calibrate the probe", Set.of("probe"), 0.3, 0));

    /** Where the current's zero was read at rest already, only the shunt itself is left. */
    private static final Cure EVEN = new Cure("keep both ends of the shunt equally warm", Set.of("thermo-electric voltage"), 0.5, 0);
    private static final String ZERO_READ = "current's zero at rest";
    /** Of an energy, whose charge has a finding of its own. */
    private static final String CHARGE = "charge";

    /** For example "calibrate the shunt: ± 0.27 → ± 0.12 Ah at best"; where no cure is known, that. */
    static String of(double value, Budget budget, String unit) {
        String largest = budget.largest().name();
        if (largest.equals(CHARGE)) {
            return "what makes the charge of the same step surer makes this surer";
        }
        boolean zeroRead = budget.terms().stream().anyMatch(term -> term.name().equals(ZERO_READ));
        Optional<Cure> known = Stream.concat(zeroRead ? Stream.of(EVEN) : Stream.empty(), CURES.stream()).filter(cure -> cure.cures(largest)).findFirst();
        if (known.isEmpty()) {
            return "no cure is known here";
        }
        double now = budget.expanded();
        double left = left(value, budget, known.get()).expanded();
        String of = unit.isEmpty() ? "" : " " + unit;
        return left > WORTH * now
                ? Spots.say("%s: of ± %s%s hardly less would be left", known.get().what(), Figures.plain(now), of)
                : Spots.say("%s: ± %s → ± %s%s at best", known.get().what(), Figures.plain(now), Figures.plain(left), of);
    }

    private static Budget left(double value, Budget budget, Cure cure) {
        List<Budget.Term> terms = new ArrayList<>();
        double gone = 0;
        for (Budget.Term term : budget.terms()) {
            if (!cure.cures(term.name())) {
                terms.add(term);
            } else if (cure.ofValue() > 0) {
                gone = Math.hypot(gone, term.standard());
            } else {
                double own = Double.isNaN(term.left()) ? cure.share() * term.standard() : term.left();
                terms.add(term.sized(own));
            }
        }
        Budget.Term instead = Budget.limits(cure.what(), cure.ofValue() * value);
        terms.add(instead.standard() < gone ? instead : Budget.limits(cure.what(), 1).sized(gone));
        return new Budget(terms);
    }

}
