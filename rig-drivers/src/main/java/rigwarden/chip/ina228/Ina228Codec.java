package rigwarden.chip.ina228;

/** Registers to codes, and amperes to the calibration word. Pure; scales follow from range and bits. */
public final class Ina228Codec {
    /** Factor of SHUNT_CAL, 1/(A·Ω) (SLYS021A, equation for SHUNT_CAL). */
    private static final double CALIBRATION = 13107.2e6;
    private static final int CALIBRATION_MOST = 0x7FFF;
    private static final int CURRENT_BITS = 20;

    private final double ampsPerCode;
    private final int shuntCalibration;

    /**
     * Works out the scale.
     *
     * @param fullScaleAmps current at the end of the scale, A
     * @param ohms resistance of the shunt
     * @throws IllegalArgumentException when the range cannot show the full scale, or the calibration word overflows
     */
    public Ina228Codec(double fullScaleAmps, double ohms, AdcRange range) {
        ampsPerCode = fullScaleAmps / (1 << CURRENT_BITS - 1);
        double word = CALIBRATION * ampsPerCode * ohms * range.calibrationFactor();
        if (!(fullScaleAmps * ohms <= range.volts() * (1 + 1e-9)) || !(word >= 1) || word > CALIBRATION_MOST) {
            throw new IllegalArgumentException("INA228: " + fullScaleAmps + " A on " + ohms + " ohms is "
                    + fullScaleAmps * ohms + " V; the range ends at " + range.volts() + " V");
        }
        shuntCalibration = (int) Math.round(word);
    }

    /** Amperes of one code of CURRENT; A·s of one code of CHARGE. */
    public double ampsPerCode() {
        return ampsPerCode;
    }

    /** Word for SHUNT_CAL. */
    public int shuntCalibration() {
        return shuntCalibration;
    }

    /** Signed code from the 24 bit register CURRENT: bits 23…4. */
    public static int currentCode(long register) {
        return (int) register << 8 >> 12;
    }

    /** Code from the 24 bit register VBUS: bits 23…4, 195.3125 µV each, two's complement although never negative. */
    public static int busCode(long register) {
        return (int) register << 8 >> 12;
    }

    /** Signed code from the 40 bit register CHARGE. */
    public static long chargeCode(long register) {
        return register << 24 >> 24;
    }
}
