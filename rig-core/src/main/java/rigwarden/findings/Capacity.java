package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * Capacity by one discharge: from full to the first cell at its cut-off (IEC 62620:2014, 6.3.1; from memory).
 *
 * @param step number of the discharge
 * @param rateC mean rate, 1/h of the rating
 * @param ampHours what came out, Ah, positive, with the uncertainty of the charge and of both ends
 * @param wattHours energy that came out, Wh, positive
 * @param budget what the uncertainty of the charge is made of, Ah
 * @param bodyCelsius mean temperature of the cells
 * @param full whether the charge before ended by its taper
 * @param lowerBound whether something else than the cut-off ended it, so that the cell can do more
 */
public record Capacity(
        int step,
        double rateC,
        Uncertain ampHours,
        Uncertain wattHours,
        Budget budget,
        double bodyCelsius,
        boolean full,
        boolean lowerBound) {

    /** The capacities that these steps give, in order. */
    public static List<Capacity> of(Rig rig, List<StepFinding> steps) {
        List<Capacity> found = new ArrayList<>();
        Optional<Ended> lastCharge = Optional.empty();
        for (StepFinding step : steps) {
            if (step.kind().equals("charge")) {
                lastCharge = Optional.of(step.by());
            } else if (step.kind().equals("discharge")) {
                found.add(one(rig, step, lastCharge.equals(Optional.of(Ended.TAPER))));
                lastCharge = Optional.empty();
            } else if (step.kind().equals("park")) {
                lastCharge = Optional.empty();
            }
        }
        return List.copyOf(found);
    }

    private static Capacity one(Rig rig, StepFinding step, boolean full) {
        double ampHours = -step.chargeAmpHours().value();
        double meanAmps = step.seconds() == 0 ? 0 : ampHours / (step.seconds() / 3600);
        Channel tap = rig.channel(Role.CELL_VOLTS);
        List<Budget.Term> terms = new ArrayList<>(step.chargeBudget().terms());
        double fall = -step.endVoltsPerSecond();
        if (fall > 0) {
            double late = tap.uncertainty(step.lowest().value()) / fall;
            terms.add(Budget.standard("tap at the cut-off", late / 2 * meanAmps / 3600));
        }
        Budget budget = new Budget(terms);
        Uncertain energy = step.energyWattHours();
        return new Capacity(step.index(), meanAmps / rig.cells().ratedAmpHours(),
                new Uncertain(ampHours, budget.expanded()), new Uncertain(-energy.value(), energy.expanded()), budget,
                step.meanBodyCelsius(), full, step.by() != Ended.CUT_OFF);
    }
}
