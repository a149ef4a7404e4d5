package rigwarden.run;

/** How long ago a run was broken off, as far as that can be told. */
public sealed interface Outage {
    /**
     * It can be told.
     *
     * @param brokenNanos when its last scan was taken, on the clock of the run that would go on
     * @param nowNanos now, on that clock
     */
    record Known(long brokenNanos, long nowNanos) implements Outage {}

    /**
     * It cannot.
     *
     * @param why in words, after "an outage that cannot be told:"
     */
    record Unknown(String why) implements Outage {}
}
