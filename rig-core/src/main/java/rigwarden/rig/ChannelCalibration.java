package rigwarden.rig;

import java.time.LocalDate;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A straight-line correction of one channel, found against a reference: truth = gain × reading + offset, where the reading
 * is what the rig file alone makes of a code. {@link Calibration} is the one that a person wrote into the rig file.
 *
 * @param channel column
 * @param gain pure number near 1
 * @param offset in the channel's unit
 * @param doubt what is left
 * @param made day of the calibration
 * @param expires first day on which it no longer counts
 * @param shuntCelsius temperature of the shunt at that time, °C; of the current only, and only where it was seen
 * @param emulatedSeed of the emulated copy on which it was rehearsed; empty for the real rig
 * @param text its file, whole
 */
public record ChannelCalibration(String channel, double gain, double offset, Doubt doubt, LocalDate made, LocalDate expires,
        OptionalDouble shuntCelsius, OptionalLong emulatedSeed, String text) {
    /** The corrected value of a reading. */
    public double corrected(double reading) {
        return gain * reading + offset;
    }
}
