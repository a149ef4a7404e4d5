package rigwarden.chip.ads1115;

import rigwarden.bus.Chip;

/** Words of the chip (SBAS444E, section 8.1). No I/O. */
public final class Ads1115Codec {
    static final int CONVERSION = 0x00;
    static final int CONFIG = 0x01;
    /** Bit 15: write 1 to start, reads 1 when no conversion is going on. */
    static final int READY = 1 << 15;
    private static final int AGAINST_GROUND = 4;
    private static final int RANGE_4_096_VOLTS = 1;
    private static final int SINGLE_SHOT = 1;
    private static final int RATE_250 = 5;
    private static final int COMPARATOR_OFF = 3;

    /** Nominal conversion time at 250 samples a second. */
    public static final long CONVERSION_NANOS = 4_000_000L;

    private Ads1115Codec() {}

    /** Config word that starts one conversion of an input against ground, ± 4.096 V, 250 SPS. */
    public static int start(int input) {
        return READY | (AGAINST_GROUND + input) << 12 | RANGE_4_096_VOLTS << 9 | SINGLE_SHOT << 8 | RATE_250 << 5
                | COMPARATOR_OFF;
    }

    /** A conversion word: 16 bits, signed. */
    public static long code(long register) {
        return Chip.signed(register, 16);
    }
}
