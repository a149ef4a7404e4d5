package rigwarden.program;

import java.util.Locale;

/** What ended a step. */
public enum Ended {
    /** The current had fallen to the taper: the cells are full. */
    TAPER,
    /** The highest cell met its ceiling, or the taper took too long: not full. */
    CEILING,
    /** The first cell met its cut-off. */
    CUT_OFF,
    /** The charger ended it. */
    CHARGER,
    /** The sink ended it. */
    SINK,
    /** The battery's protection opened. */
    PROTECTION,
    /** The cells are settled. */
    SETTLED,
    /** The one element that was opened stopped the current alone. */
    PROVED,
    /** Its time was over. */
    TIME,
    /** The charge to be put in is in. */
    CHARGE_REACHED,
    /** For eight hours the cells were too cold or too warm for it, or twice so soon that nothing was moved. */
    NEVER_FIT,
    /** A run that was to go on did not: a condition for it was not met. */
    NOT_CONTINUED,
    /** A crash or a power cut broke it off. */
    CUT,
    /** The warden tripped. */
    TRIPPED,
    /** A person or a signal stopped it. */
    STOPPED;

    /** Word for files and tables. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
