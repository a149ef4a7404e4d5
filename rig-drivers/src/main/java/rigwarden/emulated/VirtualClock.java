package rigwarden.emulated;

import rigwarden.loop.Clock;

/** A clock that is where the last wait left it. */
public sealed class VirtualClock implements Clock permits WallClock {
    private long nanos;

    public VirtualClock(long nanos) {
        this.nanos = nanos;
    }

    @Override
    public long nanos() {
        return nanos;
    }

    /** Shows again what it showed before; a monotonic clock must not. */
    void back(long earlier) {
        nanos = Math.min(nanos, earlier);
    }

    @Override
    public void sleepUntil(long until) {
        nanos = Math.max(nanos, until);
    }
}
