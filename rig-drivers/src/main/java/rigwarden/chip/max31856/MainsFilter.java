package rigwarden.chip.max31856;

/** Which mains the converter's filter rejects (MAX31856, CR0 bit 0). */
public enum MainsFilter {
    HZ_50(1),
    HZ_60(0);

    private final int code;

    MainsFilter(int code) {
        this.code = code;
    }

    int code() {
        return code;
    }
}
