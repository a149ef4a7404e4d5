package rigwarden.chip.ads1220;

/** Commands and bits (SBAS501C; register 0 by SBAS683B, section 8.6, which shares it; the others from memory). */
final class Ads1220Registers {
    static final int RESET = 0x06;
    static final int START = 0x08;
    static final int RDATA = 0x10;
    /** Reads all four registers from the first. */
    static final int RREG_ALL = 0x20 | 3;
    /** Writes the first register alone. */
    static final int WREG_FIRST = 0x40;
    /** Writes all four. */
    static final int WREG_ALL = 0x40 | 3;
    static final int COUNT = 4;

    /** Register 0: MUX code of AIN0 against AVSS; the other inputs follow. */
    static final int MUX_AIN0 = 8;
    static final int MUX_SHIFT = 4;
    /** Register 0: amplifier bypassed, without which no input may be near AVSS. Gain 1 is 0 beside it. */
    static final int PGA_BYPASS = 1;
    /** Register 1: normal mode, one conversion per order, no temperature, no burn-out currents. */
    static final int RATE_SHIFT = 5;
    static final int RATE_OF_330 = 4;

    private Ads1220Registers() {}
}
