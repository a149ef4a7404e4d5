package rigwarden.chip.max31856;

/**
 * Addresses and bits (MAX31856 data sheet, register memory map; the map is that of the check values, the defaults are
 * from memory). All sixteen are read in one transaction, so that a temperature and the configuration behind it are of
 * one instant.
 */
final class Max31856Registers {
    /** Set in an address that is written. */
    static final int WRITE = 0x80;

    static final int CR0 = 0x00;
    static final int CR1 = 0x01;
    /** First of the seven that nobody writes: fault mask and thresholds. */
    static final int MASK = 0x02;
    static final int CJTO = 0x09;
    static final int CJTH = 0x0A;
    static final int LTCBH = 0x0C;
    static final int SR = 0x0F;
    static final int COUNT = 16;

    /** What mask and thresholds hold after power-up: MASK, CJHF, CJLF, LTHFTH, LTHFTL, LTLFTH, LTLFTL. */
    private static final byte[] UNTOUCHED = {(byte) 0xFF, 0x7F, (byte) 0xC0, 0x7F, (byte) 0xFF, (byte) 0x80, 0x00};

    /** CR0: begins one conversion when the select goes high; reads 1 until it is done. */
    static final int ONE_SHOT = 1 << 6;
    /** CR0: looks for an open probe in each conversion, leads below 5 kΩ. */
    static final int OPEN_DETECTION = 1 << 4;

    /** SR: cold junction, or thermocouple, beyond what the chip can convert. */
    static final int RANGE = 0xC0;
    /** SR: a wire of the probe is below ground or above supply. */
    static final int OVER_UNDER_VOLTAGE = 1 << 1;
    /** SR: the probe is open. */
    static final int OPEN = 1;

    private Max31856Registers() {}

    static byte[] untouched() {
        return UNTOUCHED.clone();
    }
}
