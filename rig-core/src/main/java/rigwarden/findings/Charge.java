package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import rigwarden.findings.trace.Continuity;
import rigwarden.quantity.Uncertain;

/** Charge and energy of a step: what the chip counted, and what nobody saw is bounded, never bridged silently. */
final class Charge {
    /** Beyond this part of the step the accumulator was blind too long. */
    private static final double BLIND_SHARE = 0.5;

    private Charge() {}

    /** The budget with the times over which the count could not be followed bounded in it. */
    static Budget bounded(Budget sound, Continuity seen) {
        if (seen.blindSeconds() == 0) {
            return sound;
        }
        List<Budget.Term> terms = new ArrayList<>(sound.terms());
        terms.add(Budget.limits(seen.summed() ? "rows missing" : "accumulator not followed", seen.blindAmps() * seen.blindSeconds() / 3600));
        return new Budget(terms);
    }

    /** Why a step's charge cannot be told; empty when it can. */
    static String refusal(StepNotes step) {
        Continuity seen = step.continuity();
        if (seen.clockWentBack()) {
            return "the rows' time went back within the step: two clocks, or one that was set; no time, no charge";
        }
        if (seen.lastScan() == seen.firstScan()) {
            return "there is one scan only: a charge needs two";
        }
        if (seen.blindSeconds() > BLIND_SHARE * step.sums().seconds() && seen.summed()) {
            return Words.say("the rows, or their currents, are missing over %.0f of %.0f s: what flowed there is anybody's guess",
                    seen.blindSeconds(), step.sums().seconds());
        }
        if (seen.blindSeconds() > BLIND_SHARE * step.sums().seconds()) {
            return Words.say("the sensor's accumulator could not be followed for %.0f of %.0f s; the host's own samples alone can"
                    + " be wrong by several percent where a ripple is on the current", seen.blindSeconds(), step.sums().seconds());
        }
        return "";
    }

    static Finding charge(StepNotes step) {
        StepFinding sums = step.sums();
        String refused = refusal(step);
        return finding(Kind.CHARGE, step, refused.isEmpty()
                ? new Answer.Value(sums.chargeAmpHours().value(), "Ah", sums.chargeBudget())
                : new Answer.Refused(refused));
    }

    /** At the cells' studs. */
    static Finding energy(StepNotes step) {
        StepFinding sums = step.sums();
        String refused = refusal(step);
        if (refused.isEmpty() && step.continuity().cellsMissing() > 0) {
            refused = step.continuity().cellsMissing() == 1 ? "one cell was never read in it"
                    : Words.say("%d cells were never read in it", step.continuity().cellsMissing());
        }
        if (refused.isEmpty() && sums.energyWattHours().value() == 0 && Math.abs(sums.chargeAmpHours().value()) > 0.1) {
            refused = "the step was broken off, and its sums of energy were never written";
        }
        Uncertain energy = sums.energyWattHours();
        double volts = sums.chargeAmpHours().value() == 0 ? 0 : Math.abs(energy.value() / sums.chargeAmpHours().value());
        double byCharge = volts * sums.chargeBudget().expanded() / 2;
        double rest = Math.sqrt(Math.max(0, energy.expanded() * energy.expanded() / 4 - byCharge * byCharge));
        Budget budget = new Budget(List.of(Budget.standard("charge", byCharge), Budget.standard("voltage taps", rest)));
        return finding(Kind.ENERGY, step, refused.isEmpty()
                ? new Answer.Value(energy.value(), "Wh", budget)
                : new Answer.Refused(refused));
    }

    /**
     * What the charge was worth at the bus, behind joints, shunt and contactor.
     *
     * @param busGainU what the bus's voltage may be wrong by, relative; NaN where it is not read
     */
    static Finding delivered(StepNotes step, double busGainU) {
        String refused = refusal(step);
        StepFinding sums = step.sums();
        double raw = step.continuity().rawCoulombs();
        if (refused.isEmpty() && (Double.isNaN(step.busWattHours()) || raw == 0 || step.continuity().blindSeconds() > 0)) {
            refused = "the bus or the accumulator was not read throughout";
        }
        if (Double.isNaN(busGainU)) {
            refused = "nobody reads the bus";
        }
        double charge = sums.chargeAmpHours().value();
        double energy = refused.isEmpty() ? step.busWattHours() * charge * 3600 / raw : 0;
        double volts = charge == 0 ? 0 : Math.abs(energy / charge);
        Budget budget = new Budget(List.of(Budget.standard("charge", volts * sums.chargeBudget().expanded() / 2),
                Budget.standard("voltage of the bus", refused.isEmpty() ? busGainU / 2 * Math.abs(energy) : 0)));
        Finding found = finding(Kind.ENERGY, step, refused.isEmpty()
                ? new Answer.Value(energy, "Wh", budget)
                : new Answer.Refused(refused));
        return new Finding(found.kind(), found.about() + ", at the bus", found.answer(), found.conditions(), found.notes(),
                found.firstScan(), found.lastScan());
    }

    private static Finding finding(Kind kind, StepNotes step, Answer answer) {
        return new Finding(kind, Words.step(step.sums()), answer, Conditions.of(step), notes(step), step.continuity().firstScan(),
                step.continuity().lastScan());
    }

    private static List<String> notes(StepNotes step) {
        Continuity seen = step.continuity();
        List<String> notes = new ArrayList<>();
        double half = step.sums().unseenAmpHours();
        if (half > 0) {
            notes.add(Words.say("it was interrupted and went on: up to %.2f Ah may have flowed unseen until the contactor was open; half of it is counted,"
                    + " and as much either way is in the budget", 2 * half));
        }
        step.zero().ifPresent(zero -> notes.add(Words.say("the shunt showed %+.1f ± %.1f mA with the contactor open, before and after:"
                + " taken off", 1000 * zero.amps(), 2000 * zero.standardAmps())));
        if (seen.summed()) {
            notes.add("nothing counted the charge: it is the sum of the rows");
        }
        if (seen.summed() && seen.blindSeconds() > 0) {
            notes.add(Words.say("over %.1f s, %.1f s at the longest, rows or their currents are missing: %.4f Ah were put in their place, and all that may have"
                    + " flowed instead is in the budget", seen.blindSeconds(), seen.longestGapSeconds(), seen.guessedCoulombs() / 3600));
            notes.addAll(CrossChecks.of(step));
            return notes;
        }
        if (seen.unreadSeconds() > 0) {
            notes.add(Words.say("over %.1f s of it the current was not read: the charge is the count's, which is held against no samples there",
                    seen.unreadSeconds()));
        }
        if (seen.missingRows() > 0) {
            notes.add(Words.say("%d rows are missing, the longest gap is %.1f s: the count went on, and what it counted fits the"
                    + " currents before and after", seen.missingRows(), seen.longestGapSeconds()));
        }
        if (seen.blindSeconds() > 0 && !seen.summed()) {
            notes.add(Words.say("over %.1f s the count does not fit the current, or is not there: %.2f Ah were put in its"
                    + " place, and the most that can be wrong with them is in the budget", seen.blindSeconds(),
                    seen.guessedCoulombs() / 3600));
        }
        notes.addAll(CrossChecks.of(step));
        return notes;
    }
}
