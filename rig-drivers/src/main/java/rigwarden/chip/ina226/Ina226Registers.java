package rigwarden.chip.ina226;

/** Pointers and bits (SBOS547B, section 7.1, table 7-1). */
final class Ina226Registers {
    static final int CONFIG = 0x00;
    static final int SHUNT = 0x01;
    static final int BUS = 0x02;
    static final int MASK_ENABLE = 0x06;
    static final int MANUFACTURER_ID = 0xFE;
    static final int DIE_ID = 0xFF;

    /** CONFIG: bit 14 reads 1 always. */
    static final int FIXED = 1 << 14;
    /** MASK_ENABLE: a conversion has been finished; cleared by reading. */
    static final int CVRF = 1 << 3;
    /** MASK_ENABLE: an arithmetic overflow. */
    static final int OVF = 1 << 2;

    /** "TI". */
    static final int MANUFACTURER = 0x5449;
    /** DIE_ID bits 15…4; the low nibble is the revision. */
    static final int DIE = 0x226;

    private Ina226Registers() {}
}
