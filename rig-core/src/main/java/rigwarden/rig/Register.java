package rigwarden.rig;

/**
 * One number of an instrument that speaks Modbus, and how it is carried over.
 *
 * @param function that reads or writes it: 1 to 4 read, 5, 6 and 16 write (MODBUS Application Protocol V1.1b3, section 6)
 * @param address as sent, from 0, of its first register, or of its bit
 * @param type how the number lies there
 * @param lowFirst whether the register with the lower half comes first; of types with two registers only
 * @param scale one count, in V, A or s
 */
public record Register(int function, int address, Type type, boolean lowFirst, double scale) {
    /** Function that reads coils. */
    public static final int READ_COILS = 1;
    /** Function that reads holding registers. */
    public static final int READ_HOLDING = 3;
    /** Function that writes one bit. */
    public static final int WRITE_BIT = 5;
    /** Function that writes one register. */
    public static final int WRITE_ONE = 6;
    /** Function that writes any count of registers. */
    public static final int WRITE_MANY = 16;

    private static final double LARGEST_FLOAT = 1e6;

    /** How a number lies in registers. */
    public enum Type {
        /** One coil or discrete input. */
        BIT(1, 0, 1),
        /** One register, from 0. */
        U16(1, 0, 0xFFFF),
        /** One register, two's complement. */
        S16(1, Short.MIN_VALUE, Short.MAX_VALUE),
        /** Two registers, from 0. */
        U32(2, 0, 0xFFFF_FFFFL),
        /** Two registers, two's complement. */
        S32(2, Integer.MIN_VALUE, Integer.MAX_VALUE),
        /** Two registers, IEEE 754 single precision. */
        F32(2, -LARGEST_FLOAT, LARGEST_FLOAT);

        private final int registers;
        private final double least;
        private final double most;

        Type(int registers, double least, double most) {
            this.registers = registers;
            this.least = least;
            this.most = most;
        }

        /** Registers that it takes; one for a bit. */
        public int registers() {
            return registers;
        }

        /** Word for it in a rig file. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** Highest number that fits, in V, A or s. */
    public double most() {
        return type.most * scale;
    }

    /** Lowest number that fits, in V, A or s. */
    public double least() {
        return type.least * scale;
    }

    /** The smallest step between two numbers, in V, A or s; nothing for a floating point number. */
    public double step() {
        return type == Type.F32 ? 0 : scale;
    }

    /** Whether it is read and written in bits. */
    public boolean bit() {
        return type == Type.BIT;
    }

    /** The first address behind it. */
    public int end() {
        return address + type.registers();
    }
}
