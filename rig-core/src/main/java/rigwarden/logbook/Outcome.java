package rigwarden.logbook;

import java.util.Locale;

/** How a run stands in the ledger. */
public enum Outcome {
    RUNNING,
    FINISHED,
    TRIPPED,
    STOPPED,
    /** The process that wrote it is gone, and it was not over. */
    INTERRUPTED;

    /** Word of the column {@code state}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Outcome of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
