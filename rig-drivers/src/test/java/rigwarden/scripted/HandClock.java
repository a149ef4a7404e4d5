package rigwarden.scripted;

import rigwarden.loop.Clock;

/** Time that moves by waiting and by hand. */
public final class HandClock implements Clock {
    private long nanos;

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public void sleepUntil(long then) {
        nanos = Math.max(nanos, then);
    }

    public void pass(long more) {
        nanos += more;
    }
}
