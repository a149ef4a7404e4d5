package rigwarden.chip.ads1115;

/** Samples a second (SBAS444E, section 8.1.3, DR). */
public enum DataRate {
    SPS_8(8, 0),
    SPS_16(16, 1),
    SPS_32(32, 2),
    SPS_64(64, 3),
    SPS_128(128, 4),
    SPS_250(250, 5),
    SPS_475(475, 6),
    SPS_860(860, 7);

    /** The rate may be 10 % low (SBAS444E, electrical characteristics). */
    private static final double SLOWEST = 0.9;
    /** Wake-up from power-down, 25 µs (SBAS444E, single-shot mode), doubled. */
    private static final long WAKE_NANOS = 50_000;

    private final int perSecond;
    private final int code;

    DataRate(int perSecond, int code) {
        this.perSecond = perSecond;
        this.code = code;
    }

    public int perSecond() {
        return perSecond;
    }

    /** Longest time from start to result, ns: just over 1.1 nominal times. */
    public long longestNanos() {
        return Math.round(1e9 / (perSecond * SLOWEST)) + WAKE_NANOS;
    }

    int code() {
        return code;
    }
}
