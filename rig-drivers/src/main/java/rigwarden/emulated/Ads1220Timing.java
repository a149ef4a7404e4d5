package rigwarden.emulated;

/** How long the ADS1220 converts (TI SBAS501C, table of conversion times, in periods of its 4.096 MHz clock; from memory). */
final class Ads1220Timing {
    private static final double CLOCK_HERTZ = 4.096e6;
    private static final int DUTY_CYCLE = 1;
    private static final int TURBO = 2;
    private static final int[] NORMAL_NEXT = {204768, 91120, 46128, 23664, 12464, 6896, 4144};
    private static final int[] NORMAL_FIRST = {204850, 91218, 46226, 23762, 12562, 6994, 4242};
    private static final int[] TURBO_NEXT = {102384, 45560, 23064, 11832, 6232, 3448, 2072};
    private static final int[] TURBO_FIRST = {102434, 45618, 23122, 11890, 6290, 3506, 2130};
    private static final int FASTEST = NORMAL_NEXT.length - 1;
    /** A chip in its duty-cycle mode sleeps three times as long as it converts. */
    private static final int SLEEPS = 4;
    private static final double SLOWEST_SAMPLES = 20;
    private static final double[] NORMAL_SAMPLES = {20, 45, 90, 175, 330, 600, 1000};

    private Ads1220Timing() {}

    /** Of a single shot, or of the first conversion after a start, ns. */
    static long firstNanos(int rates, double oscillator) {
        return nanos((turbo(rates) ? TURBO_FIRST : NORMAL_FIRST)[code(rates)], oscillator);
    }

    /** Of each that follows by itself, ns. */
    static long nextNanos(int rates, double oscillator) {
        boolean sleeps = (rates >> 3 & 3) == DUTY_CYCLE;
        long periods = (turbo(rates) ? TURBO_NEXT : NORMAL_NEXT)[code(rates)];
        return nanos(sleeps ? SLEEPS * periods : periods, oscillator);
    }

    /** Noise against that at 20 samples a second: white, so it goes with the root of the rate. */
    static double noise(int rates) {
        return Math.sqrt(NORMAL_SAMPLES[code(rates)] * (turbo(rates) ? 2 : 1) / SLOWEST_SAMPLES);
    }

    private static boolean turbo(int rates) {
        return (rates >> 3 & 3) == TURBO;
    }

    /** Code 7 is reserved: taken as the fastest. */
    private static int code(int rates) {
        return Math.min(rates >> 5 & 7, FASTEST);
    }

    private static long nanos(long periods, double oscillator) {
        return (long) Math.ceil(periods / CLOCK_HERTZ / (1 + oscillator) * 1e9);
    }
}
