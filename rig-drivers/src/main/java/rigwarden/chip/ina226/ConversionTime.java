package rigwarden.chip.ina226;

/** Conversion times (SBOS547B, configuration register, VBUSCT and VSHCT). */
public enum ConversionTime {
    US_140(140, 0),
    US_204(204, 1),
    US_332(332, 2),
    US_588(588, 3),
    US_1100(1100, 4),
    US_2116(2116, 5),
    US_4156(4156, 6),
    US_8244(8244, 7);

    private final int micros;
    private final int code;

    ConversionTime(int micros, int code) {
        this.micros = micros;
        this.code = code;
    }

    public int micros() {
        return micros;
    }

    int code() {
        return code;
    }
}
