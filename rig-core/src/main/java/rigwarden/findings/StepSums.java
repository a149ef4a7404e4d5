package rigwarden.findings;

import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Continuity;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;
import rigwarden.run.Account;

/**
 * What was summed over one step, and the finding that it makes: at once, or better when the current's zero after it is known.
 *
 * @param flowNanos time under current
 * @param chargeAmpHours as the sensor showed it, its zero not yet taken off
 * @param clockLearnt whether the ratio of host to chip clock was known
 * @param shuntMean mean temperature of the shunt's body, °C; NaN where nobody saw it
 * @param shuntHottest highest, °C
 */
record StepSums(Traced rig, int step, String kind, long beganNanos, long endedNanos, long flowNanos, double chargeAmpHours, Account account, Continuity seen,
        boolean clockLearnt, double shuntMean, double shuntHottest, StepFinding.Extreme lowest, StepFinding.Extreme highest,
        StepFinding.Extreme hottest, double meanBodyCelsius, double startAmps, double slope, Ended by, boolean settled) {
    /** Below this part of a capacity two sums of a charge are not set in proportion. */
    private static final double COMPARABLE = 0.001;

    StepFinding finding(Optional<Zero> zero) {
        double seconds = (endedNanos - beganNanos) * 1e-9;
        double taken = zero.map(Zero::amps).orElse(0.0) * seconds / 3600;
        double charge = chargeAmpHours - taken;
        Budget sound = ChargeBudget.of(rig, charge, seconds, clockLearnt, shuntMean, shuntHottest, zero);
        Budget budget = Charge.bounded(sound, seen);
        double trapezoid = account.ampHours();
        boolean comparable = Math.abs(trapezoid) > COMPARABLE * rig.cells().ratedAmpHours();
        double energy = account.wattHours() * (comparable ? chargeAmpHours / trapezoid : 1) - taken * meanVolts();
        return new StepFinding(step, kind, seconds, flowNanos * 1e-9, new Uncertain(charge, budget.expanded()), budget, trapezoid,
                new Uncertain(energy, energyU(energy, charge, budget, seconds)), lowest, highest, hottest, meanBodyCelsius, startAmps, slope, by,
                settled, List.of());
    }

    private double meanVolts() {
        return account.nanos() == 0 ? 0 : account.microVoltSeconds() * 1e3 / account.nanos();
    }

    private double energyU(double energy, double charge, Budget budget, double seconds) {
        int cells = rig.channels(Role.CELL_VOLTS).size();
        double volts = Math.abs(charge) < 1e-3 ? 3.3 * cells : Math.abs(energy / charge);
        double byCharge = budget.expanded() * volts;
        double byTaps = 0;
        for (Channel cell : rig.channels(Role.CELL_VOLTS)) {
            byTaps += cell.uncertainty(volts / cells) * Math.abs(charge);
        }
        double rounding = 1e-6 * seconds / 3600;
        return Math.sqrt(byCharge * byCharge + byTaps * byTaps + rounding * rounding);
    }
}
