package rigwarden.calibration;

import rigwarden.rig.ChannelCalibration;

/** What came of the points. */
public sealed interface Result {
    /**
     * A calibration.
     *
     * @param calibration with the text of its file
     * @param line that was drawn, in the meter's unit
     */
    record Found(ChannelCalibration calibration, LineFit line) implements Result {}

    /**
     * None: the points, or the meter, do not allow it.
     *
     * @param words where, what was found, what is allowed, why, and what to do
     */
    record Refused(String words) implements Result {}
}
