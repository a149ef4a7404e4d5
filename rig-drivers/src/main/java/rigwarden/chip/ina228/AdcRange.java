package rigwarden.chip.ina228;

/** Range of the shunt input (SLYS021A, CONFIG register, bit ADCRANGE). */
public enum AdcRange {
    /** ± 163.84 mV. */
    WIDE(0.16384, 1, 0),
    /** ± 40.96 mV. */
    NARROW(0.04096, 4, 1);

    private final double volts;
    private final int calibrationFactor;
    private final int code;

    AdcRange(double volts, int calibrationFactor, int code) {
        this.volts = volts;
        this.calibrationFactor = calibrationFactor;
        this.code = code;
    }

    /** End of the range, V. */
    public double volts() {
        return volts;
    }

    /** Factor of SHUNT_CAL in this range. */
    int calibrationFactor() {
        return calibrationFactor;
    }

    int bits() {
        return code << 4;
    }
}
