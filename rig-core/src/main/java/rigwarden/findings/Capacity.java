package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
 * @param ampHours what came out since the cells were full, Ah, positive, with the uncertainty of the charge and of both ends
 * @param wattHours energy that came out, Wh, positive, likewise
 * @param budget what the uncertainty of the charge is made of, Ah
 * @param energyBudget what the uncertainty of the energy is made of, Wh
 * @param bodyCelsius mean temperature of the cells; NaN where nobody read it
 * @param bodyExpandedKelvin what that may be wrong by as the probes are, K: they may all be wrong alike
 * @param endVolts lowest voltage of a cell under the current, where it ended, V; infinite where none was read
 * @param endPlayVolts how far from a cut-off that may be for a discharge that ended at it, V: what the tap may be wrong by, and what
 *     the cell falls until the current has stopped
 * @param start how full the cells were when it began
 * @param beforeAmpHours what other steps took out after the cells were full and before it began, Ah; negative where they put in
 * @param missingAmpHours what the charge before may have left missing, Ah: the capacity may be higher by as much
 * @param lowerBound whether the capacity may be any amount higher: the start was not known, or something else than the
 *     cut-off ended it
 * @param interrupted whether the discharge, or what led to it from full, was broken off and went on: it then decides neither for
 *     nor against a rating
 */
public record Capacity(
        int step,
        double rateC,
        Uncertain ampHours,
        Uncertain wattHours,
        Budget budget,
        Budget energyBudget,
        double bodyCelsius,
        double bodyExpandedKelvin,
        double endVolts,
        double endPlayVolts,
        Start start,
        double beforeAmpHours,
        double missingAmpHours,
        boolean lowerBound,
        boolean interrupted) {
    /** A charge that ends at the ceiling at up to 0.2 C leaves at most this part missing (safety design; assumption). */
    private static final double MISSING = 0.01;
    private static final double MISSING_RATE_C = 0.2;
    /** Digits that a rate loses on its way through sums of codes, relative. */
    private static final double ROUNDING = 1e-4;
    /** Of the rating other steps may take out between full and the discharge, to be added to it (project's assumption); with more nobody knows how full it began. */
    private static final double TAKEN = 0.05;
    /**
     * From the cut-off until the current has stopped, s: the mean of a second by which a step ends, the opening, and what the slope over
     * ten seconds leaves out of a fall that grows (project's assumption).
     */
    private static final double STOPS_SECONDS = 5;

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
        Optional<StepFinding> charge = Optional.empty();
        List<StepFinding> led = new ArrayList<>();
        for (StepFinding step : steps) {
            switch (step.kind()) {
                case "charge" -> {
                    charge = Optional.of(step);
                    led = new ArrayList<>();
                }
                case "discharge", "heat_run" -> {
                    found.add(one(rig, step, charge, led));
                    charge = Optional.empty();
                    led = new ArrayList<>();
                }
                case "park" -> {
                    charge = Optional.empty();
                    led = new ArrayList<>();
                }
                case "balance" -> {
                    boolean fills = step.by() == Ended.TAPER;
                    charge = fills ? Optional.of(step) : charge;
                    led = fills ? new ArrayList<>() : led;
                    if (!fills) {
                        led.add(step);
                    }
                }
                case String _ -> led.add(step);
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
        double rated = rig.cells().ratedAmpHours();
        List<StepFinding> moved = led.stream().filter(s -> !s.kind().equals("rest")).toList();
        double before = -moved.stream().mapToDouble(s -> s.chargeAmpHours().value()).sum();
        Start start = before > TAKEN * rated ? Start.UNKNOWN : start(charge);
        double chargeC = charge.map(c -> c.meanAmps() / rated).orElse(0.0);
        boolean bounded = start == Start.FULL || start == Start.NOT_FULL && chargeC <= MISSING_RATE_C * (1 + ROUNDING);
        double missing = start == Start.NOT_FULL && bounded ? MISSING * rated : 0;
        List<StepFinding> counted = start == Start.UNKNOWN ? List.of(step) : Stream.concat(moved.stream(), Stream.of(step)).toList();
        double volts = volts(step);
        // what was put in after full, nobody knows how much of it the cells kept beyond full: all of it or nothing
        double over = start == Start.UNKNOWN ? 0 : Math.max(0, -before);
        double ampHours = -counted.stream().mapToDouble(s -> s.chargeAmpHours().value()).sum() + over / 2;
        double wattHours = -counted.stream().mapToDouble(s -> s.energyWattHours().value()).sum() + over / 2 * volts;
        List<Budget.Term> terms = new ArrayList<>(counted.size() == 1 ? step.chargeBudget().terms() : Budgets.net(counted).terms());
        terms.addAll(ends(rig, step));
        if (over > 0) {
            terms.add(Budget.limits("put in after full", over / 2));
        }
        List<StepFinding> whole = Stream.of(charge.stream(), led.stream(), Stream.of(step)).flatMap(s -> s).toList();
        whole.forEach(s -> s.breaks().forEach(broken -> terms.addAll(broken.terms(s.kind(), rated))));
        Budget budget = new Budget(terms);
        Budget energy = energy(budget, volts, counted);
        double body = step.meanBodyCelsius();
        return new Capacity(step.index(), -step.meanAmps() / rated, new Uncertain(ampHours, budget.expanded()),
                new Uncertain(wattHours, energy.expanded()), budget, energy, body,
                rig.channels(Role.BODY).stream().mapToDouble(c -> Double.isNaN(body) ? 0 : c.uncertainty(body)).average().orElse(0),
                step.lowest().value(), play(rig, step), start, before, missing, !bounded || step.by() != Ended.CUT_OFF,
                whole.stream().anyMatch(s -> !s.breaks().isEmpty()));
    }

    /** Mean voltage of all cells together; 0 where the energy was never written. */
    private static double volts(StepFinding step) {
        double charge = step.chargeAmpHours().value();
        return charge == 0 ? 0 : Math.abs(step.energyWattHours().value() / charge);
    }

    private static Channel tap(Traced rig, StepFinding step) {
        return rig.column(step.lowest().where()).orElse(rig.channel(Role.CELL_VOLTS));
    }

    private static double fall(StepFinding step) {
        return Math.max(0, -step.endVoltsPerSecond());
    }

    /** A cut-off that is read wrong comes so much earlier or later; what ended otherwise hangs on no tap. */
    private static List<Budget.Term> ends(Traced rig, StepFinding step) {
        if (fall(step) == 0 || step.by() != Ended.CUT_OFF) {
            return List.of();
        }
        double late = tap(rig, step).uncertainty(step.lowest().value()) / fall(step);
        return List.of(Budget.standard(Nature.TAPS, "tap at the cut-off", late / 2 * -step.meanAmps() / 3600));
    }

    private static double play(Traced rig, StepFinding step) {
        double volts = step.lowest().value();
        return Double.isFinite(volts) ? tap(rig, step).uncertainty(volts) + fall(step) * Math.max(STOPS_SECONDS, rig.scanNanos() * 1e-9) : 0;
    }

    /** The charge's terms at the mean voltage, and the taps, which err alike in all steps. */
    private static Budget energy(Budget charge, double volts, List<StepFinding> counted) {
        List<Budget.Term> terms = new ArrayList<>();
        charge.terms().forEach(t -> terms.add(t.times(volts)));
        double taps = 0;
        for (StepFinding step : counted) {
            double byCharge = step.chargeBudget().expanded() * volts(step);
            taps += Math.sqrt(Math.max(0, step.energyWattHours().expanded() * step.energyWattHours().expanded() - byCharge * byCharge)) / 2;
        }
        terms.add(Budget.standard(Nature.TAPS, "voltage taps", taps));
        return new Budget(terms);
    }
}
