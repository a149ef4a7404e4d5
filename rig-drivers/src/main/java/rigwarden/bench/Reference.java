package rigwarden.bench;

import rigwarden.bus.BusFailure;

/**
 * What a chip must always say of itself, read anew every ten seconds; and in each scan from the first time that it says
 * something else until it says it again. Meanwhile its readings do not count.
 */
final class Reference {
    private static final int EVERY_SCANS = 100;

    /** Reads it. */
    interface Look {
        /** Throws when it is not as it must be. */
        void read() throws BusFailure;
    }

    private final Look look;
    private long due;
    private boolean kept = true;

    /** {@code place} of the chip among all: chips take turns. */
    Reference(Look look, int place) {
        this.look = look;
        due = (long) EVERY_SCANS + place % EVERY_SCANS;
    }

    /** Looks if it is time, or if the last look failed. */
    void check(long scan) throws BusFailure {
        if (kept && scan < due) {
            return;
        }
        due = scan + EVERY_SCANS;
        kept = false;
        look.read();
        kept = true;
    }
}
