package rigwarden.emulated;

import java.util.Arrays;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channels;
import rigwarden.rig.Converter;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntChip;
import rigwarden.rig.ShuntMonitor;
import rigwarden.rig.VoltageInput;

/** What the chips of one specimen of a rig err by, drawn within the limits that their data sheets or the rig file state. */
final class ChipErrors {
    /** INA228 oscillator, limits ± 0.5 % (SLYS021A, electrical characteristics). */
    private static final double OSCILLATOR = 0.005;
    /** INA226: a conversion of 1.1 ms takes at most 1.21 ms (SBOS547, electrical characteristics; from memory). */
    private static final double INA226_OSCILLATOR = 0.1;
    /** ADS1220 oscillator, limits ± 2 % (SBAS501C, electrical characteristics; from memory). */
    private static final double ADS1220_OSCILLATOR = 0.02;
    /** MAX31856: 185 ms at most where 169 ms are typical (electrical characteristics; from memory). */
    private static final double MAX31856_SLOWNESS = 0.08;
    /** MAX31855: 100 ms at most where 70 ms are typical (19-5793, electrical characteristics). */
    private static final double MAX31855_SLOWNESS = 0.43;
    /** One code of the INA226, of the ADS1220 ten microvolts: assumptions, as are all noises here. */
    private static final double PLAIN_SHUNT_NOISE_VOLTS = 2.5e-6;
    private static final double PRECISE_NOISE_VOLTS = 10e-6;
    /** Of an input after the multiplexer has moved (assumption). */
    private static final double SETTLE_SECONDS = 100e-6;
    private static final double SHUNT_NOISE_VOLTS = 1.2e-6;
    private static final double TAP_NOISE_VOLTS = 60e-6;
    private static final double PROBE_NOISE_K = 0.03;

    private final Rig rig;
    private final Specimen specimen;

    ChipErrors(Rig rig, Specimen specimen) {
        this.rig = rig;
        this.specimen = specimen;
    }

    /** Where a calibration of a real rig tells the current's errors, shunt and offset together have all of them. */
    private double shuntGain(double limits) {
        return specimen.told(Calibratable.CURRENT).isPresent() ? 0 : specimen.within("shunt", "gain", limits);
    }

    private double shuntOffsetVolts(double limits) {
        ShuntMonitor shunt = rig.shunt();
        return specimen.told(Calibratable.CURRENT).map(told -> told.shift() * shunt.ohms()).orElseGet(() ->
                specimen.within("shunt", "offset", limits) + specimen.within("shunt", "thermo-electric", shunt.thermoVolts()));
    }

    private double busGain(double limits) {
        return specimen.told(Calibratable.PACK).isPresent() ? 0 : specimen.within("shunt", "bus gain", limits);
    }

    Ina228Emulator.Errors ina228() {
        return new Ina228Emulator.Errors(shuntGain(Channels.INA228_GAIN), shuntOffsetVolts(Channels.INA228_OFFSET_VOLTS),
                busGain(Channels.INA228_BUS_GAIN), specimen.within("shunt", "oscillator", OSCILLATOR),
                specimen.noise(SHUNT_NOISE_VOLTS));
    }

    Ina226Emulator.Errors ina226() {
        ShuntChip chip = rig.shunt().chip();
        return new Ina226Emulator.Errors(shuntGain(chip.gain()), shuntOffsetVolts(chip.offsetVolts()), busGain(chip.busGain()), specimen.within("shunt", "oscillator", INA226_OSCILLATOR),
                specimen.noise(PLAIN_SHUNT_NOISE_VOLTS));
    }

    /** Offset of the INA226's bus input, V. */
    double ina226BusOffset() {
        return specimen.told(Calibratable.PACK).isPresent() ? 0 : specimen.within("shunt", "bus offset", rig.shunt().chip().busOffsetVolts());
    }

    /** A chip with a calibrated input has no errors of its own here: what a calibration leaves is drawn by input. */
    Ads1115Emulator.Errors ads1115(VoltageInput input) {
        String part = input.bus() + ":" + input.address();
        boolean calibrated = calibrated(input.converter());
        double[] gains = new double[8];
        Arrays.fill(gains, calibrated ? 0 : specimen.within(part, "gain", Channels.ADS1115_GAIN));
        double[] offsets = new double[4];
        Arrays.fill(offsets, calibrated
                ? 0
                : specimen.within(part, "offset", Channels.ADS1115_OFFSET_CODES * Channels.ADS1115_VOLTS));
        return new Ads1115Emulator.Errors(gains, offsets, specimen.within(part, "rate", 0.1), input.supplyVolts(),
                specimen.noise(TAP_NOISE_VOLTS));
    }

    private boolean calibrated(Converter converter) {
        return rig.inputs().stream().anyMatch(i -> i.converter().equals(converter)
                && (i.calibration().known() || specimen.told(i.name()).isPresent()));
    }

    /** As with the other converter, a calibrated chip has no errors of its own here. */
    Ads1220Emulator.Errors ads1220(VoltageInput input, Converter.Ads1220 chip) {
        boolean calibrated = calibrated(chip);
        return new Ads1220Emulator.Errors(calibrated ? 0 : specimen.within(part(chip), "gain", Converter.Ads1220.GAIN),
                calibrated ? 0 : specimen.within(part(chip), "offset", chip.offsetVolts()), chip.external() ? 0 : reference(chip),
                specimen.within(part(chip), "rate", ADS1220_OSCILLATOR), input.supplyVolts(), specimen.noise(PRECISE_NOISE_VOLTS), SETTLE_SECONDS);
    }

    /** What a converter's reference has too much, relative; nothing where a calibration has taken it in. */
    double reference(Converter.Ads1220 chip) {
        return calibrated(chip) ? 0 : specimen.within(part(chip), "reference", chip.referenceRelative());
    }

    private static String part(Converter.Ads1220 chip) {
        return chip.at().node() + chip.at().line();
    }

    Mcp9601Emulator.Errors mcp9601(Probe probe) {
        return new Mcp9601Emulator.Errors(probeKelvin(probe), specimen.noise(PROBE_NOISE_K));
    }

    Max31856Emulator.Errors max31856(Probe probe) {
        return new Max31856Emulator.Errors(probeKelvin(probe), 0, specimen.noise(PROBE_NOISE_K),
                specimen.within(probe.name(), "conversion", MAX31856_SLOWNESS));
    }

    Max31855Emulator.Errors max31855(Probe probe) {
        return new Max31855Emulator.Errors(probeKelvin(probe), 0, specimen.noise(PROBE_NOISE_K),
                MAX31855_SLOWNESS * specimen.chance(probe.name(), "conversion").nextDouble());
    }

    /** Of the whole chain, chip and wire, so that the chip's own temperature gets none beside it. */
    private double probeKelvin(Probe probe) {
        double kelvin = specimen.around(probe.name(), "error", probe.uncertaintyKelvin() / 2);
        double most = probe.uncertaintyKelvin();
        return Math.clamp(kelvin, -most, most);
    }
}
