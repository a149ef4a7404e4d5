package rigwarden.live;

import java.util.OptionalLong;
import rigwarden.rig.Channel;

/**
 * How warm a place will be when the running step ends, and when it will be at its limit. A forecast trips nothing: it may only give notice.
 *
 * @param where the place
 * @param celsius best guess, °C
 * @param low it is hardly less, °C
 * @param high it is hardly more, °C
 * @param limit reading at which the warden trips if nothing else changes, °C
 * @param leftNanos time until the end of the step
 * @param earliestNanos time until the limit, hardly less; nothing where it will hardly be met before the step ends
 * @param latestNanos the same, hardly more; nothing where it may not be met before the step ends
 */
public record Ahead(Channel where, double celsius, double low, double high, double limit, long leftNanos, OptionalLong earliestNanos,
        OptionalLong latestNanos) {
    /** Whether the limit is met before the step ends: surely, or more likely than not. */
    public boolean crosses() {
        return latestNanos.isPresent() || earliestNanos.isPresent() && celsius >= limit;
    }

    /** Whether it can be met at all, by what is known. */
    public boolean mayCross() {
        return earliestNanos.isPresent();
    }

    /** Distance of the best guess from the limit, K; negative beyond it. */
    double margin() {
        return limit - celsius;
    }

    /** The same look some time later. */
    Ahead after(long passedNanos, long nowLeftNanos) {
        return new Ahead(where, celsius, low, high, limit, nowLeftNanos, sooner(earliestNanos, passedNanos), sooner(latestNanos, passedNanos));
    }

    private static OptionalLong sooner(OptionalLong when, long passedNanos) {
        return when.isPresent() ? OptionalLong.of(Math.max(0, when.getAsLong() - passedNanos)) : when;
    }
}
