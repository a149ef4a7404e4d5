package rigwarden.emulated;

import java.util.concurrent.locks.LockSupport;

/** The clock of an emulated rig that runs in real time, because something outside this process belongs to it. */
public final class WallClock extends VirtualClock {
    private final long originNanos = System.nanoTime();

    public WallClock() {
        super(0);
    }

    @Override
    public long nanos() {
        return System.nanoTime() - originNanos;
    }

    @Override
    public void sleepUntil(long until) {
        for (long left = until - nanos(); left > 0; left = until - nanos()) {
            LockSupport.parkNanos(left);
        }
    }
}
