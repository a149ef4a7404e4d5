package rigwarden.live;

import java.util.Optional;
import rigwarden.program.Ended;

/**
 * One step's place in the night. Times are monotonic; those to come are estimates.
 *
 * @param step from 1
 * @param kind word for its kind
 * @param place before, at or after now
 * @param beginNanos when it began or will begin about
 * @param endNanos when it ended or will end about
 * @param by what ended it
 */
public record Stretch(int step, String kind, Place place, long beginNanos, long endNanos, Optional<Ended> by) {
    /** Where a step lies. */
    public enum Place {
        PAST,
        NOW,
        TO_COME,
        /** It never began, and will not. */
        DROPPED
    }
}
