package rigwarden.chip.ads1115;

/** Pointers and bits (SBAS444E, section 8.1, register map). */
final class Ads1115Registers {
    static final int CONVERSION = 0x00;
    static final int CONFIG = 0x01;
    /** Low threshold: nothing uses the comparator, and nothing writes here. */
    static final int LOW_THRESHOLD = 0x02;
    /** What it holds after power-up (SBAS444E, section 8.1.4). */
    static final int LOW_THRESHOLD_RESET = 0x8000;

    /** CONFIG: written 1 starts a conversion; reads 1 while none is running. */
    static final int OS = 1 << 15;
    /** CONFIG: MUX code of AIN0 against GND; the other inputs follow. */
    static final int MUX_AIN0 = 4;
    static final int MUX_SHIFT = 12;
    static final int PGA_SHIFT = 9;
    /** CONFIG: one conversion, then power-down. */
    static final int SINGLE_SHOT = 1 << 8;
    static final int RATE_SHIFT = 5;
    /** CONFIG: comparator off. */
    static final int COMPARATOR_OFF = 3;

    private Ads1115Registers() {}
}
