package rigwarden.chip.ina226;

/** Count of conversions averaged on the chip (SBOS547B, configuration register, AVG). */
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

    int code() {
        return code;
    }
}
