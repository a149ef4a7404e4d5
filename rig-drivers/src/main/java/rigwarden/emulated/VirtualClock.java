package rigwarden.emulated;

import rigwarden.loop.Clock;

/** A clock that is where the last wait left it. */
public final class VirtualClock implements Clock {
    private long nanos;

    public VirtualClock(long nanos) {
        this.nanos = nanos;
    }

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public void sleepUntil(long until) {
        nanos = Math.max(nanos, until);
    }
}
