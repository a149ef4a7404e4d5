package rigwarden.emulated;

import java.util.function.Function;
import rigwarden.pack.Chance;
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

    static Calibrated drawn(ChannelCalibration found, Function<String, Chance> chance) {
        Doubt doubt = found.doubt();
        double turned = doubt.slopeU() * chance.apply("slope").nextGaussian();
        double steep = turned + within(doubt.scaleLimits(), chance.apply("scale")) + doubt.certificateU() * chance.apply("certificate").nextGaussian();
        double high = doubt.heightU() * chance.apply("height").nextGaussian() - turned * doubt.pivot() + within(doubt.zeroLimits(), chance.apply("zero"));
        return new Calibrated((1 + steep) / found.gain(), (high - found.offset()) / found.gain());
    }

    private static double within(double limits, Chance chance) {
        return limits * (2 * chance.nextDouble() - 1);
    }

    /** What is read before the correction. */
    double reading(double truth) {
        return scale * truth + shift;
    }
}
