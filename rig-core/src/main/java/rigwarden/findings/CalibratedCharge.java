package rigwarden.findings;

import java.util.List;
import rigwarden.rig.Doubt;

/** What a calibrated current makes a charge uncertain by; takes the place of the shunt's and the amplifier's own limits. */
final class CalibratedCharge {
    private CalibratedCharge() {}

    /**
     * Terms in Ah.
     *
     * @param doubt of the current
     * @param charge Ah
     * @param hours it took
     */
    static List<Budget.Term> terms(Doubt doubt, double charge, double hours) {
        double amps = hours > 0 ? charge / hours : 0;
        double beyond = Math.copySign(doubt.beyond(amps), amps - doubt.pivot());
        return List.of(
                Budget.limits(Nature.GAIN, "reference meter's scale", doubt.scaleLimits() * charge),
                Budget.limits(Nature.WANDERING, "reference meter's zero, drift", doubt.zeroLimits() * hours),
                Budget.standard(Nature.GAIN, "shunt's certificate", doubt.certificateU() * charge),
                Budget.standard(Nature.OFFSET, "the calibration's line", doubt.heightU() * hours),
                Budget.standard(Nature.GAIN, "the calibration's slope", doubt.slopeU() * (charge - doubt.pivot() * hours)),
                Budget.limits(Nature.GAIN, "beyond the calibrated span", beyond * hours));
    }
}
