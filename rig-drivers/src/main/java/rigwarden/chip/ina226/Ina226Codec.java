package rigwarden.chip.ina226;

/**
 * Registers to codes. Pure. The shunt's own register is read, whose scale is fixed: the chip's current register follows
 * from a calibration that a brown-out sets to nothing, and then reads 0 A.
 */
public final class Ina226Codec {
    /** One code of the shunt register, V (SBOS547B, table 7-1). */
    public static final double SHUNT_VOLTS = 2.5e-6;
    /** One code of the bus register, V. */
    public static final double BUS_VOLTS = 1.25e-3;

    private Ina226Codec() {}

    /** Signed code of the shunt register. */
    public static int shuntCode(int register) {
        return (short) register;
    }

    /** Code of the bus register, which has no sign: bit 15 is always 0. */
    public static int busCode(int register) {
        return register & 0x7FFF;
    }
}
