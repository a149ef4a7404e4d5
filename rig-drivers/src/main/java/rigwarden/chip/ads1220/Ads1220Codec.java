package rigwarden.chip.ads1220;

/** Bytes to code. Pure; the scale follows from range and bits. */
public final class Ads1220Codec {
    private static final int HALF_CODES = 1 << 23;

    private Ads1220Codec() {}

    /** Signed 24 bit code, most significant byte first. */
    public static int code(byte[] bytes) {
        return bytes[0] << 16 | (bytes[1] & 0xFF) << 8 | bytes[2] & 0xFF;
    }

    /** Volts of one code at gain 1 (SBAS501C, data format): two references over 2²⁴. */
    public static double voltsPerCode(double referenceVolts) {
        return referenceVolts / HALF_CODES;
    }
}
