package rigwarden.chip.mcp9601;

import rigwarden.bus.Chip;

/** Words of the chip (DS20005426, section 5). No I/O. */
public final class Mcp9601Codec {
    static final int HOT_JUNCTION = 0x00;
    static final int STATUS = 0x04;
    static final int SENSOR_CONFIG = 0x05;
    static final int DEVICE_CONFIG = 0x06;
    static final int DEVICE_ID = 0x20;
    /** High byte of the identity of the 9601, the one that sees open and shorted probes; from memory. */
    static final int IDENTITY = 0x41;
    static final int UPDATED = 1 << 6;
    /** From memory (DS20005426, STATUS register of the 9601). */
    static final int SHORTED = 1 << 5;
    static final int OPEN = 1 << 4;
    /** Type T in bits 6:4, no filter. */
    static final int TYPE_T = 2 << 4;
    /** 16-bit converter in bits 6:5, cold junction 0.0625 °C, normal mode. */
    static final int SIXTEEN_BITS = 1 << 5;

    private Mcp9601Codec() {}

    /** Hot junction: 16 bits, signed, 0.0625 °C each. */
    public static long code(long register) {
        return Chip.signed(register, 16);
    }
}
