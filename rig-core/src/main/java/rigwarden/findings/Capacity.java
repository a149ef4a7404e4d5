package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/**
 * Capacity by one discharge: from full to the first cell at its cut-off (IEC 62620:2014, 6.3.1; from memory).
 *
 * @param step number of the discharge
 * @param rateC mean rate, 1/h of the rating
 * @param ampHours what came out, Ah, positive, with the uncertainty of the charge and of both ends
 * @param wattHours energy that came out, Wh, positive
 * @param budget what the uncertainty of the charge is made of, Ah
 * @param bodyCelsius mean temperature of the cells; NaN where nobody read it
 * @param start how full the cells were when it began
 * @param missingAmpHours what the charge before may have left missing, Ah: the capacity may be higher by as much
 * @param lowerBound whether the capacity may be any amount higher: the start was not known, or something else than the
 *     cut-off ended it
 * @param interrupted whether the discharge, or what led to it from full, was broken off and went on: it then never decides
 *     against a rating
 */
public record Capacity(
        int step,
        double rateC,
        Uncertain ampHours,
        Uncertain wattHours,
        Budget budget,
        double bodyCelsius,
        Start start,
        double missingAmpHours,
        boolean lowerBound,
        boolean interrupted) {
    /** A charge that ends at the ceiling at up to 0.2 C leaves at most this part missing (safety design; assumption). */
    private static final double MISSING = 0.01;
    private static final double MISSING_RATE_C = 0.2;

    /** How full the cells were. */
    public enum Start {
        /** The charge before ended by its taper. */
        FULL,
        /** It ended with the highest cell at its ceiling, before the taper. */
        NOT_FULL,
        /** Neither is known. */
        UNKNOWN
    }

    /** The capacities that these steps give, in order. */
    public static List<Capacity> of(Traced rig, List<StepFinding> steps) {
        List<Capacity> found = new ArrayList<>();
        Optional<StepFinding> lastCharge = Optional.empty();
        List<StepFinding> led = new ArrayList<>();
        for (StepFinding step : steps) {
            led.add(step);
            switch (step.kind()) {
                case "charge" -> {
                    lastCharge = Optional.of(step);
                    led = new ArrayList<>(List.of(step));
                }
                case "discharge", "heat_run" -> {
                    found.add(one(rig, step, lastCharge, led));
                    lastCharge = Optional.empty();
                    led = new ArrayList<>();
                }
                case "park" -> {
                    lastCharge = Optional.empty();
                    led = new ArrayList<>();
                }
                case String _ -> { }
            }
        }
        return List.copyOf(found);
    }

    private static Start start(Optional<StepFinding> charge) {
        Optional<Ended> by = charge.map(StepFinding::by);
        if (by.equals(Optional.of(Ended.TAPER))) {
            return Start.FULL;
        }
        return by.equals(Optional.of(Ended.CEILING)) ? Start.NOT_FULL : Start.UNKNOWN;
    }

    private static Capacity one(Traced rig, StepFinding step, Optional<StepFinding> charge, List<StepFinding> led) {
        Start start = start(charge);
        double chargeC = charge.map(c -> c.chargeAmpHours().value() / (c.seconds() / 3600) / rig.cells().ratedAmpHours())
                .orElse(0.0);
        boolean bounded = start == Start.FULL || start == Start.NOT_FULL && chargeC <= MISSING_RATE_C;
        double missing = start == Start.NOT_FULL && bounded ? MISSING * rig.cells().ratedAmpHours() : 0;
        double ampHours = -step.chargeAmpHours().value();
        double meanAmps = step.seconds() == 0 ? 0 : ampHours / (step.seconds() / 3600);
        Channel tap = rig.column(step.lowest().where()).orElse(rig.channel(Role.CELL_VOLTS));
        List<Budget.Term> terms = new ArrayList<>(step.chargeBudget().terms());
        double fall = -step.endVoltsPerSecond();
        if (fall > 0) {
            double late = tap.uncertainty(step.lowest().value()) / fall;
            terms.add(Budget.standard(Nature.TAPS, "tap at the cut-off", late / 2 * meanAmps / 3600));
        }
        led.forEach(before -> before.breaks().forEach(broken ->
                terms.addAll(broken.terms(before.kind(), rig.cells().ratedAmpHours()))));
        boolean interrupted = led.stream().anyMatch(before -> !before.breaks().isEmpty());
        Budget budget = new Budget(terms);
        Uncertain energy = step.energyWattHours();
        return new Capacity(step.index(), meanAmps / rig.cells().ratedAmpHours(),
                new Uncertain(ampHours, budget.expanded()), new Uncertain(-energy.value(), energy.expanded()), budget,
                step.meanBodyCelsius(), start, missing, !bounded || step.by() != Ended.CUT_OFF,
                interrupted);
    }
}
