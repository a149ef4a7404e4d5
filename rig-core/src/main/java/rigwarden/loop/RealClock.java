package rigwarden.loop;

import java.util.concurrent.locks.LockSupport;

/** The machine's own monotonic clock. */
public final class RealClock implements Clock {
    @Override
    public long nanos() {
        return System.nanoTime();
    }

    /** Parks again and again until the deadline itself: a park may end early, and is then no reason to begin early. */
    @Override
    public void sleepUntil(long nanos) {
        for (long left = nanos - System.nanoTime(); left > 0; left = nanos - System.nanoTime()) {
            LockSupport.parkNanos(left);
        }
    }
}
