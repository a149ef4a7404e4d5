package rigwarden.emulated;

import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;

/**
 * A channel whose errors a calibration of the real rig tells: before its correction it reads scale × truth + shift, so that after
 * it no more is wrong than one draw from the calibration's doubt.
 *
 * @param scale pure number
 * @param shift in the channel's unit
 */
record Calibrated(double scale, double shift) {
    static final Calibrated STRAIGHT = new Calibrated(1, 0);

    static Calibrated drawn(ChannelCalibration found, Specimen specimen) {
        Doubt doubt = found.doubt();
        String part = found.channel();
        double turned = specimen.around(part, "slope", doubt.slopeU());
        double steep = turned + specimen.within(part, "scale", doubt.scaleLimits()) + specimen.around(part, "certificate", doubt.certificateU());
        double high = specimen.around(part, "height", doubt.heightU()) - turned * doubt.pivot() + specimen.within(part, "zero", doubt.zeroLimits());
        return new Calibrated((1 + steep) / found.gain(), (high - found.offset()) / found.gain());
    }

    /** What is read before the correction. */
    double reading(double truth) {
        return scale * truth + shift;
    }
}
