package rigwarden.rigfile;

import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * What the uncertainty of one tap costs.
 *
 * @param name column of the tap
 * @param uncertaintyVolts expanded uncertainty (k = 2) at 3.65 V, V
 * @param givesBackVolts how much higher a ceiling could be set after a calibration, V; 0 where nothing is to be gained
 */
public record TapLimit(String name, double uncertaintyVolts, double givesBackVolts) {
    /** Gain after a calibration against a reference meter, expanded, relative: common practice (no source). */
    private static final double CALIBRATED_GAIN_U = 0.0002;
    /** Offset likewise, V: common practice (no source). */
    private static final double CALIBRATED_OFFSET_U = 0.0005;

    static List<TapLimit> of(Rig rig) {
        double calibrated = Math.hypot(CALIBRATED_GAIN_U * Envelope.CEILING_V, CALIBRATED_OFFSET_U);
        return rig.channels(Role.CELL_VOLTS).stream()
                .map(tap -> of(tap, calibrated))
                .toList();
    }

    private static TapLimit of(Channel tap, double calibrated) {
        double u = tap.uncertainty(Envelope.CEILING_V);
        return new TapLimit(tap.name(), u, Math.max(0, u - calibrated));
    }

    /** Largest expanded uncertainty of any tap at a voltage, V. */
    static double uncertainty(Rig rig, double volts) {
        return rig.channels(Role.CELL_VOLTS).stream().mapToDouble(tap -> tap.uncertainty(volts)).max().orElse(0);
    }
}
