package rigwarden.chip.max31855;

/** The 32 bits of a frame (19-5793 rev 5, tables 2 to 5). Pure. */
public final class Max31855Codec {
    /** One code of the thermocouple's temperature, °C. */
    public static final double CELSIUS_PER_CODE = 0.25;
    /** One code of the cold junction's, °C. */
    public static final double COLD_CELSIUS_PER_CODE = 0.0625;

    /** D16: the or of the three below. */
    static final int FAULT = 1 << 16;
    /** D17 and D3, which are always 0. */
    static final int RESERVED = 1 << 17 | 1 << 3;
    /** D2 and D1: a wire of the probe touches supply, or ground. */
    static final int SHORTED = 0b110;
    /** D0. */
    static final int OPEN = 1;

    private Max31855Codec() {}

    /** The frame as it comes, most significant byte first. */
    public static int frame(byte[] bytes) {
        return bytes[0] << 24 | (bytes[1] & 0xFF) << 16 | (bytes[2] & 0xFF) << 8 | bytes[3] & 0xFF;
    }

    /** D31…D18, signed. */
    public static int code(int frame) {
        return frame >> 18;
    }

    /** D15…D4, signed. */
    public static int coldCode(int frame) {
        return (short) frame >> 4;
    }
}
