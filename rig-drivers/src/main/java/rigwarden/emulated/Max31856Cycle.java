package rigwarden.emulated;

/**
 * When the MAX31856's conversions end (Maxim 19-7534, electrical characteristics, tables of CR0 and CR1, typical values; from
 * memory). By itself it tests for an open circuit once in sixteen conversions, at the first one too.
 */
final class Max31856Cycle {
    static final int AUTOMATIC = 1 << 7;
    static final int COLD_OFF = 1 << 3;
    private static final int FIFTY_HERTZ = 1;
    private static final int OPEN_TEST_EVERY = 16;
    private static final double COLD_MS = 25;
    /** Of one test for an open circuit, ms, by OCFAULT: with the cold junction on, and off. */
    private static final double[] OPEN_TEST_MS = {0, 40, 60, 140};
    private static final double[] OPEN_TEST_COLD_OFF_MS = {0, 13.3, 33.4, 113.4};

    private final double slowness;
    private long endNanos = Long.MAX_VALUE;
    private int sinceOpenTest;
    private boolean testsOpen;

    Max31856Cycle(double slowness) {
        this.slowness = slowness;
    }

    Max31856Cycle copy() {
        Max31856Cycle copy = new Max31856Cycle(slowness);
        copy.endNanos = endNanos;
        copy.sinceOpenTest = sinceOpenTest;
        copy.testsOpen = testsOpen;
        return copy;
    }

    boolean busy() {
        return endNanos != Long.MAX_VALUE;
    }

    /** Whether the conversion that is under way, or has just ended, tests the circuit. */
    boolean testsOpen() {
        return testsOpen;
    }

    void stop() {
        endNanos = Long.MAX_VALUE;
    }

    void start(long nanos, int control, int settings) {
        boolean fifty = (control & FIFTY_HERTZ) != 0;
        sinceOpenTest = 0;
        testsOpen = openTestNanos(control) > 0;
        endNanos = nanos + openTestNanos(control)
                + nanos((fifty ? 169 : 143) + (samples(settings) - 1) * (fifty ? 40 : 33.33) - coldMs(control));
    }

    boolean ended(long nanos) {
        return nanos >= endNanos;
    }

    /** After an end: whole rounds of sixteen that nobody has looked at are left out. */
    void goOn(long nanos, int control, int settings) {
        if ((control & AUTOMATIC) == 0) {
            stop();
            return;
        }
        boolean fifty = (control & FIFTY_HERTZ) != 0;
        long next = nanos((fifty ? 98 : 82) + (samples(settings) - 1) * (fifty ? 20 : 16.67) - coldMs(control));
        long round = OPEN_TEST_EVERY * next + openTestNanos(control);
        sinceOpenTest = (sinceOpenTest + 1) % OPEN_TEST_EVERY;
        testsOpen = sinceOpenTest == 0 && openTestNanos(control) > 0;
        endNanos += Math.max(0, nanos - endNanos) / round * round + next + (testsOpen ? openTestNanos(control) : 0);
    }

    /** Averages: 1, 2, 4, 8, and 16 for every code above. */
    static int samples(int settings) {
        return 1 << Math.min(settings >> 4 & 7, 4);
    }

    private long openTestNanos(int control) {
        int kind = control >> 4 & 3;
        return nanos((control & COLD_OFF) != 0 ? OPEN_TEST_COLD_OFF_MS[kind] : OPEN_TEST_MS[kind]);
    }

    private static double coldMs(int control) {
        return (control & COLD_OFF) != 0 ? COLD_MS : 0;
    }

    private long nanos(double milliseconds) {
        return Math.round(milliseconds * (1 + slowness) * 1e6);
    }
}
