package rigwarden.bench;

import rigwarden.bus.BusFailure;

/**
 * What a chip must always say of itself, read anew every ten seconds; and in each scan from the first time that it says
 * something else until it says it again. Meanwhile its readings do not count.
 */
final class Reference {
    private static final long EVERY_NANOS = 10_000_000_000L;

    /** Reads it. */
    interface Look {
        /** Throws when it is not as it must be. */
        void read() throws BusFailure;
    }

    private final Look look;
    private final long everyScans;
    private long due;
    private boolean kept = true;

    /**
     * Not looked at yet.
     *
     * @param scanNanos period of the scan
     * @param place of the chip among all: chips take turns
     */
    Reference(Look look, long scanNanos, int place) {
        this.look = look;
        everyScans = Math.max(1, EVERY_NANOS / scanNanos);
        due = everyScans + place % everyScans;
    }

    /** Looks if it is time, or if the last look failed. */
    void check(long scan) throws BusFailure {
        if (kept && scan < due) {
            return;
        }
        due = scan + everyScans;
        kept = false;
        look.read();
        kept = true;
    }
}
