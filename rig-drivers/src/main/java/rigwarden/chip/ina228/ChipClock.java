package rigwarden.chip.ina228;

/**
 * What is known about the chip's clock from the instants at which results became ready, all on the host's clock.
 *
 * @param edges count of edges on this base
 * @param firstNanos the first one
 * @param lastNanos the latest one
 * @param cycles results between first and latest
 * @param ratio host seconds in one second of the chip, 1 until two edges are known
 */
public record ChipClock(int edges, long firstNanos, long lastNanos, long cycles, double ratio) {
    /** Nothing known. */
    public static final ChipClock UNKNOWN = new ChipClock(0, 0, 0, 0, 1);

    private static final long SECOND = 1_000_000_000L;
    /** After a longer silence the count of results since the latest edge would be a guess. */
    private static final long LONGEST_GAP = 300 * SECOND;

    /**
     * Learns from one edge. The intervals grow (1 s, 10 s, 60 s) with the ratio's precision: the chip's clock may be
     * off by 0.5 %, which is 0.15 of a result in a second, so that the count is never in doubt.
     *
     * @param nanos host time at which a result became ready
     * @param cycleNanos nominal time of one result
     */
    public ChipClock with(long nanos, long cycleNanos) {
        if (edges == 0 || nanos - lastNanos > LONGEST_GAP) {
            return new ChipClock(1, nanos, nanos, 0, ratio);
        }
        long passed = cycles + Math.round((nanos - lastNanos) / (cycleNanos * ratio));
        if (passed == 0) {
            return this;
        }
        double learnt = (double) (nanos - firstNanos) / ((double) passed * cycleNanos);
        return new ChipClock(edges + 1, firstNanos, nanos, passed, learnt);
    }

    /** Time from the latest edge to the next one that is wanted, ns. */
    public long intervalNanos() {
        return switch (edges) {
            case 0 -> 0;
            case 1 -> SECOND;
            case 2 -> 9 * SECOND;
            default -> 60 * SECOND;
        };
    }
}
