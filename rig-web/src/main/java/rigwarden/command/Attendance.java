package rigwarden.command;

import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * Whether a person is beside the rig: the arm key turned off and on again, at least every fifteen minutes. It is asked for
 * as long as the programme says nothing of being unattended.
 */
final class Attendance {
    /** As safety asks of a run that somebody stands beside. */
    static final long LONGEST_NANOS = 900_000_000_000L;
    private static final double ON = 0.5;

    private final Channel arm;
    private boolean on;
    private long seenNanos = Long.MIN_VALUE;

    Attendance(Rig rig) {
        arm = rig.channel(Role.ARM);
    }

    /** Looks at the key. */
    void take(Scan scan) {
        if (scan.readings().get(arm.index()) instanceof Reading.Valid valid) {
            boolean now = valid.value() > ON;
            if (now && !on || seenNanos == Long.MIN_VALUE) {
                seenNanos = scan.nanos();
            }
            on = now;
        }
    }

    /** Somebody was there: a start needs the key as well. */
    void shown(long nanos) {
        seenNanos = nanos;
    }

    /** Time since somebody was seen, nanoseconds. */
    long goneNanos(long nowNanos) {
        return seenNanos == Long.MIN_VALUE ? 0 : nowNanos - seenNanos;
    }
}
