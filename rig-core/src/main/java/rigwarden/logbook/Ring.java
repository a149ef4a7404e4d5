package rigwarden.logbook;

import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Bounded hand-off from one thread to one other, without a lock. A row keeps its slot until it is released, which is
 * after its commit: a transaction that failed is written again from here.
 */
final class Ring {
    private final AtomicReferenceArray<Row> slots;
    private final AtomicLong offered = new AtomicLong();
    private final AtomicLong released = new AtomicLong();

    Ring(int rows) {
        slots = new AtomicReferenceArray<>(rows);
    }

    /** Takes a row; false when full. Offering thread only. */
    boolean offer(Row row) {
        long at = offered.getPlain();
        if (at - released.getAcquire() >= slots.length()) {
            return false;
        }
        slots.setPlain(slot(at), row);
        offered.setRelease(at + 1);
        return true;
    }

    /** Rows offered ever; those below it can be read. */
    long offered() {
        return offered.getAcquire();
    }

    /** Rows released ever; those below it are gone. */
    long released() {
        return released.getAcquire();
    }

    /** The row of this number. Writing thread only. */
    Row row(long number) {
        return slots.getPlain(slot(number));
    }

    /** Frees all rows below this number. Writing thread only. */
    void release(long below) {
        for (long number = released.getPlain(); number < below; number++) {
            slots.setRelease(slot(number), null);
        }
        released.setRelease(below);
    }

    /** When the oldest row that is not released was offered, or {@code otherwise} if there is none. Any thread. */
    long oldestNanos(long otherwise) {
        for (long at = released(); at < offered(); at = Math.max(at + 1, released())) {
            Row row = slots.getAcquire(slot(at));
            if (row != null) {
                return row.offeredNanos();
            }
        }
        return otherwise;
    }

    /** Share of the slots in use, 0…1. Any thread. */
    double fill() {
        long gone = released();
        return Math.min(1, (double) (offered() - gone) / slots.length());
    }

    private int slot(long number) {
        return (int) (number % slots.length());
    }
}
