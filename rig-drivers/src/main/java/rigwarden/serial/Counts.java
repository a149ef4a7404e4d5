package rigwarden.serial;

import rigwarden.rig.Register;

/** Numbers in registers: each register is sent high byte first (MODBUS Application Protocol V1.1b3, 4.2). */
final class Counts {
    private static final double ROUNDING = 1e-6;
    private static final int REGISTER_BITS = 16;
    private static final int MASK = 0xFFFF;

    private Counts() {}

    /** A number as its registers, first register in the lower half of the result's index; never more than the number. */
    static int[] of(Register register, double value) {
        double fitting = Math.max(register.least(), Math.min(register.most(), value));
        long raw = switch (register.type()) {
            case BIT, U16, S16, U32, S32 -> (long) Math.floor(fitting / register.scale() + ROUNDING);
            case F32 -> Float.floatToRawIntBits(notAbove(fitting / register.scale()));
        };
        int low = (int) raw & MASK;
        if (register.type().registers() == 1) {
            return new int[] {low};
        }
        int high = (int) (raw >> REGISTER_BITS) & MASK;
        return register.lowFirst() ? new int[] {low, high} : new int[] {high, low};
    }

    private static float notAbove(double value) {
        float near = (float) value;
        return near > value ? Math.nextDown(near) : near;
    }

    /**
     * The number in registers.
     *
     * @param first content of the first register
     * @param second content of the second; nothing for types with one
     */
    static double value(Register register, int first, int second) {
        int wide = register.lowFirst() ? second << REGISTER_BITS | first : first << REGISTER_BITS | second;
        double counts = switch (register.type()) {
            case BIT, U16 -> first;
            case S16 -> (short) first;
            case U32 -> Integer.toUnsignedLong(wide);
            case S32 -> wide;
            case F32 -> Float.intBitsToFloat(wide);
        };
        return counts * register.scale();
    }
}
