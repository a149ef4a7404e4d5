package rigwarden.live;

import rigwarden.rig.Channel;

/**
 * How warm a place will be when the running step ends. A forecast trips nothing: it may only give notice.
 *
 * @param where the place
 * @param celsius best guess, °C
 * @param low it is hardly less, °C
 * @param high it is hardly more, °C
 * @param limit reading at which the warden trips if nothing else changes, °C
 * @param leftNanos time until the end of the step
 */
public record Ahead(Channel where, double celsius, double low, double high, double limit, long leftNanos) {
    /** Whether the limit is likely to be met before the step ends. */
    public boolean crosses() {
        return celsius >= limit;
    }

    /** Distance of the best guess from the limit, K; negative beyond it. */
    double margin() {
        return limit - celsius;
    }
}
