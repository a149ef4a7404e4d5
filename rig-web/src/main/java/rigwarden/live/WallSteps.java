package rigwarden.live;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Locale;
import java.util.Optional;

/**
 * Tells where the clock on the wall was set. It is a label and nothing else: many boards keep no time without power, and a time service
 * sets them in the middle of a run. What is said of a day and an hour afterwards is right only if that is known.
 */
public final class WallSteps {
    /** What a time service corrects bit by bit stays far below, from one look to the next. */
    private static final Duration LEAST = Duration.ofSeconds(1);

    private boolean looked;
    private long lastNanos;
    private LocalDateTime last = LocalDateTime.MIN;

    /**
     * It was set.
     *
     * @param shown what it would have shown now
     * @param shows what it shows
     */
    public record Step(LocalDateTime shown, LocalDateTime shows) {
        /** By so much, forward positive, s. */
        public double seconds() {
            return Duration.between(shown, shows).toNanos() * 1e-9;
        }

        /** In words. */
        public String words() {
            return String.format(Locale.ROOT, "the clock on the wall was set from %s to %s, by %+.0f s", shown.withNano(0), shows.withNano(0), seconds());
        }
    }

    /**
     * Looks at both clocks.
     *
     * @param nanos monotonic time
     * @param wall local time on the wall
     * @return what was done to it since the last look
     */
    public Optional<Step> look(long nanos, LocalDateTime wall) {
        LocalDateTime shown = looked ? last.plusNanos(nanos - lastNanos) : wall;
        looked = true;
        lastNanos = nanos;
        last = wall;
        return Duration.between(shown, wall).abs().compareTo(LEAST) > 0 ? Optional.of(new Step(shown, wall)) : Optional.empty();
    }
}
