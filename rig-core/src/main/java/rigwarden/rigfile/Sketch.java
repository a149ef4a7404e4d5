package rigwarden.rigfile;

import java.util.List;
import java.util.Map;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Channels;
import rigwarden.rig.Converter;
import rigwarden.rig.Device;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/**
 * A rig whose keys were all readable, before anybody asked whether its parts fit together.
 *
 * @param rig the parts; its channels are worked out only when the checks have passed
 * @param cellOhms lowest AC resistance of one cell, ohm
 * @param converters the ADCs
 * @param keys full key of the table of each input, probe, path part and device, by name
 * @param oneWayBreakers names of contactors that break their current in one direction only
 * @param prechargeJoules what the pre-charge resistor bears in one blow, J
 * @param bleedWatts what the bleed resistor bears for hours, W
 */
record Sketch(
        Rig rig,
        double cellOhms,
        List<Adc> converters,
        Map<String, String> keys,
        List<String> oneWayBreakers,
        double prechargeJoules,
        double bleedWatts) {

    /** One ADC: full key of its table, the chip, its supply in V. */
    record Adc(String key, Converter converter, double supplyVolts) {}

    String key(VoltageInput input, String key) {
        return keys.get(input.name()) + "." + key;
    }

    String key(Probe probe, String key) {
        return keys.get(probe.name()) + "." + key;
    }

    String key(Device device, String key) {
        return keys.get(device.name()) + "." + key;
    }

    /** The same rig with its channels. */
    Rig complete() {
        return rig.with(channels());
    }

    /** The channels that these parts give. */
    List<Channel> channels() {
        return Channels.of(rig.scanNanos(), rig.shunt(), rig.inputs(), rig.probes(), rig.devices(), rig.calibrations());
    }

    /** The same with the calibrations that lie beside the file. */
    Sketch with(List<ChannelCalibration> calibrations) {
        return new Sketch(rig.calibrated(calibrations).with(List.of()), cellOhms, converters, keys, oneWayBreakers, prechargeJoules,
                bleedWatts);
    }
}
