package rigwarden.emulated;

/** From volts to codes (TI SLYS022A, Table 8-1; worked example TI SLYS021A, section 8.2). */
final class Ina228Scale {
    static final long POWER_FULL = (1L << 24) - 1;
    private static final double SHUNT_STEP = 312.5e-9;
    private static final double FINE_STEP = 78.125e-9;
    private static final double BUS_STEP = 195.3125e-6;
    private static final double TEMPERATURE_STEP = 7.8125e-3;
    private static final double BUS_FULL_VOLTS = 85;
    private static final double CALIBRATION = 13107.2e6;
    private static final int UNITY = 4096;

    private Ina228Scale() {}

    static int shunt(double volts, boolean fine) {
        return signed20(Math.round(volts / (fine ? FINE_STEP : SHUNT_STEP)));
    }

    static int bus(double volts) {
        return (int) Math.round(Math.clamp(volts, 0, BUS_FULL_VOLTS) / BUS_STEP);
    }

    static int temperature(double celsius) {
        return Math.clamp(Math.round(celsius / TEMPERATURE_STEP), Short.MIN_VALUE, Short.MAX_VALUE);
    }

    /**
     * The CURRENT code before it is cut to 20 bits. SHUNT_CAL stands for CURRENT_LSB times ohms, so it divides: the
     * datasheet's example (311040, 4050) gives 314572, which is cut, not rounded.
     */
    static long current(int shuntCode, int calibration) {
        return calibration == 0 ? 0 : (long) shuntCode * UNITY / calibration;
    }

    /** POWER before it is cut to 24 bits, in 3.2 CURRENT_LSB: 195.3125 µV / 3.2 V is 2 to the minus 14. */
    static long power(int busCode, int currentCode) {
        return Math.abs((long) busCode * currentCode) >> 14;
    }

    /** CURRENT codes for one volt across the shunt. */
    static double perVolt(boolean fine, int calibration) {
        return calibration == 0 ? 0 : (fine ? 4 : 1) * CALIBRATION / calibration;
    }

    static int signed20(long code) {
        return (int) Math.clamp(code, -(1L << 19), (1L << 19) - 1);
    }
}
