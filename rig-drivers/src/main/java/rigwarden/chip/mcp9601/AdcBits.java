package rigwarden.chip.mcp9601;

/** Resolution of the thermocouple's converter (DS20005426F, DEVICE CONFIGURATION register). */
public enum AdcBits {
    BITS_18(0),
    BITS_16(1),
    BITS_14(2),
    BITS_12(3);

    private final int code;

    AdcBits(int code) {
        this.code = code;
    }

    int code() {
        return code;
    }
}
