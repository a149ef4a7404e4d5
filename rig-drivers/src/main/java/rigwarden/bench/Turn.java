package rigwarden.bench;

/**
 * The scans in which a channel is read, when its period is longer than the scan's. Channels of one period take turns,
 * so that each scan has about the same work.
 *
 * @param every read in each such scan, at least 1
 * @param offset place among its likes
 */
record Turn(int every, int offset) {
    static Turn of(long periodNanos, long scanNanos, int place) {
        int every = (int) Math.max(1, Math.round((double) periodNanos / scanNanos));
        return new Turn(every, place % every);
    }

    boolean isDue(long scan) {
        return scan % every == offset;
    }
}
