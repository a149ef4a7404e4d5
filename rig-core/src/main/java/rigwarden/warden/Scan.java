package rigwarden.warden;

import java.util.List;

/**
 * One pass over all channels.
 *
 * @param number from 1, never repeated in a run
 * @param nanos monotonic time at which it began
 * @param readings by channel index
 */
public record Scan(long number, long nanos, List<Reading> readings) {}
