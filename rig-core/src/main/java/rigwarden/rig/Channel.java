package rigwarden.rig;

import java.util.Optional;
import rigwarden.quantity.Quantity;

/**
 * One measured thing of a rig. A reading is stored as the chip's own integer; {@code value = shift + code * scale}.
 *
 * @param index place in every scan, from 0
 * @param name column name, unit last, for example {@code cell_01_v}
 * @param role what it is for
 * @param cell number of the cell that it belongs to, from 1; 0 for none
 * @param periodNanos time between two fresh readings; older than 2.5 of them is stale
 * @param scale unit of the quantity for one code, calibration included
 * @param shift value at code 0
 * @param gainU expanded uncertainty proportional to the reading, relative; of a calibrated channel a bound
 * @param offsetU expanded uncertainty independent of the reading, in the quantity's unit; likewise
 * @param lowest plausible value; below it the channel itself is at fault
 * @param highest plausible value
 * @param lagSeconds time constant by which the sensor follows its place (a bead on a stud), seconds
 * @param doubt what a calibration beside the rig file leaves; empty without one
 */
public record Channel(
        int index,
        String name,
        Role role,
        int cell,
        long periodNanos,
        double scale,
        double shift,
        double gainU,
        double offsetU,
        double lowest,
        double highest,
        double lagSeconds,
        Optional<Doubt> doubt) {
    /** Without a calibration beside the rig file. */
    public Channel(int index, String name, Role role, int cell, long periodNanos, double scale, double shift, double gainU,
            double offsetU, double lowest, double highest, double lagSeconds) {
        this(index, name, role, cell, periodNanos, scale, shift, gainU, offsetU, lowest, highest, lagSeconds, Optional.empty());
    }

    /** Periods after which a reading is stale. */
    public static final double STALE_PERIODS = 2.5;

    public Quantity quantity() {
        return role.quantity();
    }

    /** Value of a code, in the quantity's unit. */
    public double value(long code) {
        return shift + code * scale;
    }

    /** Expanded uncertainty (k = 2) of a reading, in the quantity's unit. */
    public double uncertainty(double value) {
        if (doubt.isPresent()) {
            return doubt.get().expanded(value);
        }
        double gain = gainU * value;
        return Math.sqrt(gain * gain + offsetU * offsetU);
    }

    /** Whether its place can have such a value; NaN is none. */
    public boolean plausible(double value) {
        return value >= lowest && value <= highest;
    }

    /** Age beyond which a reading is stale, nanoseconds. */
    public long staleNanos() {
        return (long) (STALE_PERIODS * periodNanos);
    }
}
