package rigwarden.chip.max31856;

/** Registers to codes and back. Pure; scales follow from the position of the one-degree bit. */
public final class Max31856Codec {
    /** One code of the linearised temperature, 2⁻⁷ °C (MAX31856, linearised temperature registers). */
    public static final double CELSIUS_PER_CODE = 1.0 / (1 << 7);
    /** One code of the cold-junction temperature, 2⁻⁶ °C. */
    public static final double COLD_CELSIUS_PER_CODE = 1.0 / (1 << 6);
    /** One code of the cold-junction offset, 2⁻⁴ K: four codes of the temperature that it is added to. */
    public static final double COLD_OFFSET_PER_CODE = 1.0 / (1 << 4);

    private Max31856Codec() {}

    /** Signed 19 bit code from LTCBH, LTCBM and LTCBL, which stand from there on. */
    public static int code(byte[] registers, int at) {
        return (registers[at] << 16 | (registers[at + 1] & 0xFF) << 8 | registers[at + 2] & 0xFF) >> 5;
    }

    /** Signed 14 bit code from CJTH and CJTL, which stand from there on; the chip's offset is in it already. */
    public static int coldCode(byte[] registers, int at) {
        return (registers[at] << 8 | registers[at + 1] & 0xFF) >> 2;
    }

    /**
     * Byte for the cold-junction offset.
     *
     * @param kelvin −8…7.9375, a multiple of 0.0625
     * @throws IllegalArgumentException when the register cannot hold it
     */
    static int coldOffsetByte(double kelvin) {
        double code = kelvin / COLD_OFFSET_PER_CODE;
        if (!(code >= Byte.MIN_VALUE && code <= Byte.MAX_VALUE) || code != Math.rint(code)) {
            throw new IllegalArgumentException("MAX31856: an offset of " + kelvin + " K is none of −8…7.9375 in steps of 0.0625");
        }
        return (int) code & 0xFF;
    }
}
