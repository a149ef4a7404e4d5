package rigwarden.chip.ina228;

/** Conversion times (SLYS021A, ADC_CONFIG register). */
public enum ConversionTime {
    US_50(50, 0),
    US_84(84, 1),
    US_150(150, 2),
    US_280(280, 3),
    US_540(540, 4),
    US_1052(1052, 5),
    US_2074(2074, 6),
    US_4120(4120, 7);

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
