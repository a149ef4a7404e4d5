package rigwarden.campaign;

import java.util.Locale;
import rigwarden.emulated.BoardFault;

/**
 * One fault of a case.
 *
 * @param kind what kind
 * @param place where
 * @param size in the kind's unit; of either sign; 0 without a size
 * @param fault what is done to the emulated rig
 */
public record Injection(FaultKind kind, String place, double size, BoardFault fault) {
    /** Where a size lies against the kind's limit. */
    public enum Band {
        /** Less than half of it. */
        BELOW,
        /** Half of it to twice. */
        AT,
        /** More than twice. */
        ABOVE,
        /** It has no size. */
        NONE
    }

    /** Where its size lies. */
    public Band band() {
        if (!kind.sized()) {
            return Band.NONE;
        }
        double share = Math.abs(size) / kind.limit();
        return share < 0.5 ? Band.BELOW : share <= 2 ? Band.AT : Band.ABOVE;
    }

    /** In words, for example "joint loosens at cell 3 positive, 0.42 mohm". */
    public String words() {
        String words = kind.name() + " at " + place;
        return kind.sized() ? words + String.format(Locale.ROOT, ", %.3g %s", size, kind.unit()) : words;
    }
}
