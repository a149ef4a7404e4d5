package rigwarden.warden;

import rigwarden.rig.Channel;

/** What one channel has to say in one scan: a value with its time, or a failure with its name. */
public sealed interface Reading {
    /**
     * A value with its time.
     *
     * @param code the sensor's own integer, kept so that a later calibration can be applied to it
     * @param value in the channel's unit
     * @param takenNanos when it was taken, monotonic
     */
    record Valid(long code, double value, long takenNanos) implements Reading {}

    /**
     * No value, and why.
     *
     * @param why what was wrong
     * @param sinceNanos first scan without a valid reading
     */
    record Failed(Failure why, long sinceNanos) implements Reading {}

    /** A valid reading from a code. */
    static Valid of(Channel channel, long code, long takenNanos) {
        return new Valid(code, channel.value(code), takenNanos);
    }
}
