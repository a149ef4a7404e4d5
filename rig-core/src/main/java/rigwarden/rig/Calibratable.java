package rigwarden.rig;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Which channels of a rig can be calibrated, and what a calibration belongs to: the chip, where it hangs, and what the rig file
 * computes its readings from. Whatever of that changes, the calibration is of another channel.
 */
public final class Calibratable {
    /** Column of the current. */
    public static final String CURRENT = "current_a";
    /** Column of the pack's voltage. */
    public static final String PACK = "pack_v";
    /** As the least of a calibration that a person writes into the rig file: this project's assumption. */
    private static final double DRIFT_VOLTS = 50e-6;

    private Calibratable() {}

    /** What each channel that can be calibrated depends on, in words, by column. */
    public static Map<String, String> of(Rig rig) {
        Map<String, String> all = new TreeMap<>();
        ShuntMonitor shunt = rig.shunt();
        String chip = shunt.chip() + say(", I2C bus %d, 0x%02x", shunt.bus(), shunt.address());
        all.put(CURRENT, chip + ", shunt " + shunt.ohms() + " ohm, full scale " + shunt.fullScaleAmps() + " A");
        all.put(PACK, chip + ", bus pin");
        rig.inputs().forEach(input -> all.put(input.name(), words(input)));
        return all;
    }

    private static String words(VoltageInput input) {
        String place = switch (input.converter()) {
            case Converter.Ads1115 chip -> say("0x%02x", chip.address());
            case Converter.Ads1220 chip -> "select " + chip.at().select() + (chip.at().line().isPresent() ? ", line " + chip.at().line().getAsInt() : "")
                    + ", reference " + chip.referenceVolts() + " V";
        };
        return input.converter().chip() + ", " + input.converter().wire() + ", " + place + ", pin " + input.input() + ", divider "
                + input.divider();
    }

    /** What a channel's scale may be off by without a calibration, limits ±, relative. */
    public static double scaleLimits(Rig rig, String channel) {
        ShuntMonitor shunt = rig.shunt();
        return switch (channel) {
            case CURRENT -> Math.hypot(shunt.toleranceRelative(), shunt.chip().gain());
            case PACK -> shunt.chip().busGain();
            case String name -> rig.inputs().stream().filter(input -> input.name().equals(name)).findFirst()
                    .map(input -> Math.hypot(input.converter().gain(), input.dividerRelative()))
                    .orElseThrow(() -> new IllegalArgumentException(name + " cannot be calibrated"));
        };
    }

    /** What a calibration of a channel cannot do better than, since the chip drifts by as much from day to day, limits ±, in its unit. */
    public static double driftLimits(Rig rig, String channel) {
        ShuntMonitor shunt = rig.shunt();
        return switch (channel) {
            case CURRENT -> shunt.thermoVolts() / shunt.ohms();
            case String _ -> DRIFT_VOLTS;
        };
    }

    /** Whether the rig file itself holds a calibration of a channel. */
    public static boolean written(Rig rig, String channel) {
        return rig.inputs().stream().anyMatch(input -> input.name().equals(channel) && input.calibration().known());
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
