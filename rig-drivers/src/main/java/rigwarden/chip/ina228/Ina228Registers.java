package rigwarden.chip.ina228;

/** Addresses (SLYS021A, section 7.6, register maps) and bits (the flags of DIAG_ALRT from memory of the same). */
final class Ina228Registers {
    static final int CONFIG = 0x00;
    static final int ADC_CONFIG = 0x01;
    static final int SHUNT_CAL = 0x02;
    static final int VBUS = 0x05;
    static final int CURRENT = 0x07;
    static final int CHARGE = 0x0A;
    static final int DIAG_ALRT = 0x0B;
    static final int MANUFACTURER_ID = 0x3E;
    static final int DEVICE_ID = 0x3F;

    static final int VBUS_BYTES = 3;
    static final int CURRENT_BYTES = 3;
    static final int CHARGE_BYTES = 5;

    /** DIAG_ALRT: flags stay until the register is read. */
    static final int ALATCH = 1 << 15;
    /** DIAG_ALRT: an arithmetic overflow; current may be wrong. */
    static final int MATHOF = 1 << 9;
    /** DIAG_ALRT: a conversion has been finished; cleared by reading. */
    static final int CNVRF = 1 << 1;
    /** DIAG_ALRT: 1 while the checksum of the trim memory is right. */
    static final int MEMSTAT = 1;

    /** "TI". */
    static final int MANUFACTURER = 0x5449;
    /** DEVICE_ID bits 15…4; the low nibble is the revision. */
    static final int DIE = 0x228;

    private Ina228Registers() {}
}
