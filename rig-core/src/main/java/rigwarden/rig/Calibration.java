package rigwarden.rig;

/**
 * A straight-line correction of one channel: true = gain × read + offset.
 *
 * @param gain pure number near 1
 * @param offset in the channel's unit
 * @param gainU expanded uncertainty of the gain, relative; negative width is not allowed
 * @param offsetU expanded uncertainty of the offset, in the channel's unit
 * @param known false for an uncalibrated channel, whose uncertainty comes from the chip's own limits
 */
public record Calibration(double gain, double offset, double gainU, double offsetU, boolean known) {
    /** No calibration: the data sheet's limits stand. */
    public static final Calibration NONE = new Calibration(1, 0, 0, 0, false);
}
