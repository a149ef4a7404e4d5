package rigwarden.live;

import java.util.Locale;

/**
 * How the cells are left.
 *
 * @param words after "the cells are left"
 * @param care what a person must do
 */
public record Left(String words, Care care) {
    /** Below this share a cell is not left standing. */
    private static final double NEARLY_EMPTY = 0.15;
    /** Up to this share a cell may be stored. */
    private static final double HEALTHY = 0.6;

    /** What a person must do. */
    public enum Care {
        NONE,
        LOOK,
        RECHARGE
    }

    /** How full only. */
    String brief() {
        return words.split(",", 2)[0];
    }

    static Left at(double share) {
        String percent = String.format(Locale.ROOT, "at about %.0f %%", 100 * share);
        if (share < NEARLY_EMPTY) {
            return new Left(percent + ", nearly empty: recharge within 24 h", Care.RECHARGE);
        }
        return share <= HEALTHY
                ? new Left(percent + ", good for storing", Care.NONE)
                : new Left(percent + ", fuller than is good for storing", Care.LOOK);
    }
}
