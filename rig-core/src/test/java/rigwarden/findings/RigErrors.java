package rigwarden.findings;

import rigwarden.pack.Chance;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channels;
import rigwarden.rig.Rig;

/**
 * What the instruments of one model rig are wrong by, drawn from the distributions that the rig states.
 *
 * @param shuntGain what the current is multiplied by
 * @param shuntPerKelvin and for each kelvin over 25 °C more, relative
 * @param offsetAmps what is added to it, A
 * @param clock host's seconds for each of the chip's
 * @param learnt the same as the rig learnt it
 * @param inputGain of each voltage input, relative
 * @param inputOffset of each, V
 * @param probeKelvin of each probe, K
 * @param meterGain of each channel that is a device's own meter, relative
 */
record RigErrors(double shuntGain, double shuntPerKelvin, double offsetAmps, double clock, double learnt, double[] inputGain, double[] inputOffset,
        double[] probeKelvin, double[] meterGain) {
    private static final double OSCILLATOR = 0.005;
    /** Standard, of the learnt ratio: as the budget states it. */
    private static final double RATIO_U = 20e-6;

    static RigErrors of(Rig rig, Chance drawn) {
        double gain = (1 + DrawnCalibrations.limits(drawn, rig.shunt().toleranceRelative())) * (1 + DrawnCalibrations.limits(drawn, Channels.INA228_GAIN));
        double shuntPerKelvin = DrawnCalibrations.limits(drawn, rig.shunt().perKelvin());
        double offset = (DrawnCalibrations.limits(drawn, Channels.INA228_OFFSET_VOLTS) + DrawnCalibrations.limits(drawn, rig.shunt().thermoVolts())) / rig.shunt().ohms();
        double clock = 1 + DrawnCalibrations.limits(drawn, OSCILLATOR);
        double[] gains = rig.inputs().stream().mapToDouble(i -> i.calibration().known()
                ? i.calibration().gainU() / 2 * drawn.nextGaussian()
                : DrawnCalibrations.limits(drawn, Channels.ADS1115_GAIN) + DrawnCalibrations.limits(drawn, i.dividerRelative())).toArray();
        double[] offsets = rig.inputs().stream().mapToDouble(i -> i.calibration().known()
                ? i.calibration().offsetU() / 2 * drawn.nextGaussian()
                : DrawnCalibrations.limits(drawn, Channels.ADS1115_OFFSET_CODES * Channels.ADS1115_VOLTS) * i.divider()).toArray();
        double[] probeKelvin = rig.probes().stream().mapToDouble(b -> Math.clamp(b.uncertaintyKelvin() / 2 * drawn.nextGaussian(),
                -b.uncertaintyKelvin(), b.uncertaintyKelvin())).toArray();
        double learnt = clock * (1 + RATIO_U * drawn.nextGaussian());
        double[] meterGain = rig.channels().stream().mapToDouble(c -> c.gainU() / 2 * drawn.nextGaussian()).toArray();
        double[] current = shown(rig, Calibratable.CURRENT, gain, offset, drawn);
        for (int i = 0; i < gains.length; i++) {
            double[] line = shown(rig, rig.inputs().get(i).name(), 1 + gains[i], offsets[i], drawn);
            gains[i] = line[0] - 1;
            offsets[i] = line[1];
        }
        return new RigErrors(current[0], shuntPerKelvin, current[1], clock, learnt, gains, offsets, probeKelvin, meterGain);
    }

    /** Gain and offset of the bare reading: as drawn from the parts' limits, or such that a calibration is wrong by what it states. */
    private static double[] shown(Rig rig, String channel, double gain, double offset, Chance drawn) {
        return rig.calibration(channel).map(found -> {
            DrawnCalibrations.Left left = DrawnCalibrations.left(found.doubt(), drawn);
            return new double[] {(1 + left.gain()) / found.gain(), (left.zero() - found.offset()) / found.gain()};
        }).orElse(new double[] {gain, offset});
    }
}
