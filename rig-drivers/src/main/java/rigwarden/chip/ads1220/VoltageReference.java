package rigwarden.chip.ads1220;

/** What the chip measures against (SBAS501C, register 2, VREF; from memory). */
public enum VoltageReference {
    /** Its own 2.048 V. */
    INTERNAL(0),
    /** Between REFP0 and REFN0. */
    EXTERNAL(1);

    private final int code;

    VoltageReference(int code) {
        this.code = code;
    }

    int bits() {
        return code << 6;
    }
}
