package rigwarden.chip;

/** Count of conversions averaged on the chip, alike on both current monitors (INA226: SBOS547B, configuration register, AVG; INA228: SLYS021A, ADC_CONFIG register). */
public enum Averages {
    OF_1(1, 0),
    OF_4(4, 1),
    OF_16(16, 2),
    OF_64(64, 3),
    OF_128(128, 4),
    OF_256(256, 5),
    OF_512(512, 6),
    OF_1024(1024, 7);

    private final int count;
    private final int code;

    Averages(int count, int code) {
        this.count = count;
        this.code = code;
    }

    public int count() {
        return count;
    }

    /** What stands for it in the register. */
    public int code() {
        return code;
    }
}
