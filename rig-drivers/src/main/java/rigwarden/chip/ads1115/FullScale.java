package rigwarden.chip.ads1115;

/** Ranges (SBAS444E, section 8.1.3, PGA). */
public enum FullScale {
    V_6_144(6.144, 0),
    V_4_096(4.096, 1),
    V_2_048(2.048, 2),
    V_1_024(1.024, 3),
    V_0_512(0.512, 4),
    V_0_256(0.256, 5);

    private static final int HALF_CODES = 1 << 15;

    private final double volts;
    private final int code;

    FullScale(double volts, int code) {
        this.volts = volts;
        this.code = code;
    }

    /** End of the range, ± V. */
    public double volts() {
        return volts;
    }

    /** Volts of one code. */
    public double voltsPerCode() {
        return volts / HALF_CODES;
    }

    int code() {
        return code;
    }
}
