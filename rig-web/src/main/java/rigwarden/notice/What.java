package rigwarden.notice;

import java.util.Locale;

/** What a notice is about. */
public enum What {
    /** The programme is over, or a person stopped it. */
    DONE,
    /** The warden tripped. */
    TRIPPED,
    /** A rule that only warns began to. */
    WARNED,
    /** A run that was not over is watched no longer: its process ended, or its loop stands still. */
    INTERRUPTED,
    /** The run is over and cells are nearly empty. */
    NEARLY_EMPTY,
    /** Nothing happened; where these stop coming, something did. */
    CHECK_IN,
    /** A person tries whether notices arrive. */
    TEST;

    /** Word for files and messages. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether a later one of this kind says all that an earlier one said: only the newest need arrive. */
    boolean renewed() {
        return this == CHECK_IN || this == NEARLY_EMPTY;
    }
}
