package rigwarden.loop;

/** Monotonic time. A rehearsal's clock is virtual: waiting costs nothing. */
public interface Clock {
    /** Monotonic nanoseconds. */
    long nanos();

    /** Waits until the clock shows this time; returns at once if it is past. */
    void sleepUntil(long nanos);
}
