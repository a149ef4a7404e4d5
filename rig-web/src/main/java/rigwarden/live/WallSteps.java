package rigwarden.live;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.Optional;

/**
 * Tells where the clock on the wall was set. It is a label and nothing else: many boards keep no time without power, and a time service
 * sets them in the middle of a run. What is said of a day and an hour afterwards is right only if that is known. Where summer time begins
 * or ends nobody has set anything.
 */
public final class WallSteps {
    /** What a time service corrects bit by bit stays far below, from one look to the next. */
    private static final Duration LEAST = Duration.ofSeconds(1);
    /** Between two looks at the monotonic clock no more may pass: one that was held up meanwhile tells nothing of the other clock. */
    private static final long MOST_NANOS = LEAST.toNanos() / 4;

    private boolean looked;
    private long lastNanos;
    private OffsetDateTime last = OffsetDateTime.MIN;

    /**
     * It was set.
     *
     * @param shown what it would have shown now
     * @param shows what it shows
     */
    public record Step(OffsetDateTime shown, OffsetDateTime shows) {
        /** By so much, forward positive, s. */
        public double seconds() {
            return Duration.between(shown, shows).toNanos() * 1e-9;
        }

        /** In words. */
        public String words() {
            return String.format(Locale.ROOT, "the clock on the wall was set from %s to %s, by %+.0f s", shown.toLocalDateTime().withNano(0),
                    shows.toLocalDateTime().withNano(0), seconds());
        }
    }

    /**
     * Looks at both clocks.
     *
     * @param beforeNanos monotonic time just before the look at the wall
     * @param wall time on the wall
     * @param afterNanos monotonic time just after it
     * @return what was done to it since the last look; nothing where this look was held up, and then the next one tells
     */
    public Optional<Step> look(long beforeNanos, OffsetDateTime wall, long afterNanos) {
        if (afterNanos - beforeNanos > MOST_NANOS) {
            return Optional.empty();
        }
        OffsetDateTime shown = looked ? last.plusNanos(beforeNanos - lastNanos) : wall;
        looked = true;
        lastNanos = beforeNanos;
        last = wall;
        return Duration.between(shown, wall).abs().compareTo(LEAST) > 0 ? Optional.of(new Step(shown, wall)) : Optional.empty();
    }
}
