package rigwarden.chip.ina228;

/**
 * All that the driver remembers between scans, so that a rig can be copied while it runs.
 *
 * @param clock what is known of the chip's clock
 * @param edgeDueNanos when the next edge is looked for
 * @param staleNanos when the ratio stops being believed without a new edge
 * @param read whether a charge has been read
 * @param chargeCode latest code of the accumulator
 * @param chargeAtNanos when it was read
 * @param currentCode current read before it
 */
public record Ina228State(
        ChipClock clock,
        long edgeDueNanos,
        long staleNanos,
        boolean read,
        long chargeCode,
        long chargeAtNanos,
        int currentCode) {

    /** Just started. */
    static Ina228State at(long nanos) {
        return new Ina228State(ChipClock.UNKNOWN, nanos, nanos + Ina228.RATIO_STALE_NANOS, false, 0, nanos, 0);
    }
}
