package rigwarden.chip.ina228;

/** Registers that the driver uses (SLYS021A, section 7.6). */
final class Registers {
    static final int CONFIG = 0x00;
    static final int ADC_CONFIG = 0x01;
    static final int SHUNT_CAL = 0x02;
    static final int VBUS = 0x05;
    static final int CURRENT = 0x07;
    static final int CHARGE = 0x0A;
    static final int DIAG_ALRT = 0x0B;
    static final int MANUFACTURER_ID = 0x3E;
    static final int DEVICE_ID = 0x3F;

    static final long MANUFACTURER = 0x5449;
    static final long DIE = 0x228;
    /** DIAG_ALRT: a conversion has completed since the register was last read. */
    static final long CONVERSION_READY = 0x0002;

    private Registers() {}
}
