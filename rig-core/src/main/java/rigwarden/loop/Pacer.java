package rigwarden.loop;

import java.util.concurrent.atomic.AtomicLong;

/**
 * Gives one thread its slots by absolute deadlines. A slot that is missed by more than the patience is skipped and
 * counted: slots are never run in a bunch to make up for one that took too long. One thread calls {@link #await}; any
 * thread may read the figures.
 */
public final class Pacer {
    private final Clock clock;
    private final long periodNanos;
    private final long patienceNanos;
    private final AtomicLong overruns = new AtomicLong();
    private final AtomicLong skipped = new AtomicLong();
    private long due;
    private boolean begun;
    private volatile long lateNanos;
    private volatile long worstNanos;

    /**
     * A pacer whose first slot is the moment of the first call.
     *
     * @param periodNanos time from one slot to the next, at least 1
     * @param patienceNanos lateness up to which the slots that follow keep their places
     */
    public Pacer(Clock clock, long periodNanos, long patienceNanos) {
        if (periodNanos < 1 || patienceNanos < 0) {
            throw new IllegalArgumentException("no pace: " + periodNanos + " ns, patience " + patienceNanos + " ns");
        }
        this.clock = clock;
        this.periodNanos = periodNanos;
        this.patienceNanos = patienceNanos;
    }

    /** The pace of a rig's scan: a slot that is a whole period late is gone. */
    public static Pacer ofScan(Clock clock, long scanNanos) {
        return new Pacer(clock, scanNanos, scanNanos);
    }

    /** Another pacer that stands where one stands, on a clock that shows the same. */
    public Pacer(Pacer other, Clock clock) {
        this(clock, other.periodNanos, other.patienceNanos);
        overruns.set(other.overruns.get());
        skipped.set(other.skipped.get());
        due = other.due;
        begun = other.begun;
        lateNanos = other.lateNanos;
        worstNanos = other.worstNanos;
    }

    /**
     * Waits for the next slot.
     *
     * @return how late it begins, nanoseconds, never negative; after skipped slots since the first of those was due
     */
    public long await() {
        long now = clock.nanos();
        if (!begun) {
            begun = true;
            due = now;
        }
        long wanted = due;
        if (now > due) {
            overruns.incrementAndGet();
            skip(now - due);
        }
        clock.sleepUntil(due);
        long late = Math.max(0, clock.nanos() - wanted);
        lateNanos = late;
        worstNanos = Math.max(worstNanos, late);
        due += periodNanos;
        return late;
    }

    private void skip(long behindNanos) {
        if (behindNanos > patienceNanos) {
            long gone = (behindNanos + periodNanos - 1) / periodNanos;
            skipped.addAndGet(gone);
            due += gone * periodNanos;
        }
    }

    /** How late the running slot began, s. */
    public double lateSeconds() {
        return lateNanos * 1e-9;
    }

    /** The latest that any slot began, s. */
    public double worstSeconds() {
        return worstNanos * 1e-9;
    }

    /** Slots that found the work of the one before them still going on. */
    public long overruns() {
        return overruns.get();
    }

    /** Slots that never were. */
    public long skipped() {
        return skipped.get();
    }
}
