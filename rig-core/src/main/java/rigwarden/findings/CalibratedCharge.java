package rigwarden.findings;

import java.util.List;
import rigwarden.rig.Doubt;

/** What a calibrated current makes a charge uncertain by; takes the place of the shunt's and the amplifier's own limits. Terms in Ah. */
final class CalibratedCharge {
    private CalibratedCharge() {}

    /**
     * What grows with the current.
     *
     * @param doubt of the current
     * @param charge Ah
     * @param hours it took
     * @param zeroed whether the zero was read and taken off: what is left turns about no current, and not about the line's pivot
     */
    static List<Budget.Term> gains(Doubt doubt, double charge, double hours, boolean zeroed) {
        double amps = hours > 0 ? charge / hours : 0;
        double beyond = beyond(doubt, amps) - (zeroed ? beyond(doubt, 0) : 0);
        return List.of(
                Budget.limits(Nature.GAIN, "reference meter's scale", doubt.scaleLimits() * charge),
                Budget.standard(Nature.GAIN, "shunt's certificate", doubt.certificateU() * charge),
                Budget.standard(Nature.GAIN, "the calibration's slope", doubt.slopeU() * (charge - (zeroed ? 0 : doubt.pivot() * hours))),
                Budget.limits(Nature.GAIN, "beyond the calibrated span", beyond * hours));
    }

    private static double beyond(Doubt doubt, double amps) {
        return Math.copySign(doubt.beyond(amps), amps - doubt.pivot());
    }

    /** What does not, where the zero was not read besides. */
    static List<Budget.Term> zeros(Doubt doubt, double hours) {
        return List.of(
                Budget.limits(Nature.WANDERING, "reference meter's zero, drift", doubt.zeroLimits() * hours),
                Budget.standard(Nature.OFFSET, "the calibration's line", doubt.heightU() * hours));
    }
}
