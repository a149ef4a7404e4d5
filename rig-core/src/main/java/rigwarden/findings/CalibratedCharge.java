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
        return List.of(
                Budget.limits("reference meter's scale", doubt.scaleLimits() * charge),
                Budget.limits("reference meter's zero, drift", doubt.zeroLimits() * hours),
                Budget.standard("shunt's certificate", doubt.certificateU() * charge),
                Budget.standard("the calibration's line", doubt.line(amps) * hours),
                Budget.limits("beyond the calibrated span", doubt.beyond(amps) * hours));
    }
}
