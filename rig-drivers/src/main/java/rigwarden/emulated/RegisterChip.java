package rigwarden.emulated;

/**
 * A chip with a pointer and big-endian registers. The first byte written sets the pointer, further bytes write the
 * register that it points to, a read starts there. What the datasheet does not document is not acknowledged.
 */
public abstract class RegisterChip implements PoweredTarget {
    private static final int REGISTERS = 256;

    private final byte[] widths;
    private int pointer;

    RegisterChip() {
        widths = new byte[REGISTERS];
        for (int register = 0; register < REGISTERS; register++) {
            widths[register] = (byte) width(register);
        }
    }

    RegisterChip(RegisterChip other) {
        widths = other.widths;
        pointer = other.pointer;
    }

    @Override
    public void powerOnReset() {
        pointer = 0;
        reset();
    }

    /** Puts every register but the pointer to its power-on value. */
    abstract void reset();

    /** Bytes in a register; 0 for one that the datasheet does not list. */
    abstract int width(int register);

    /** A register as it reads now, right-aligned; side effects of reading included. */
    abstract long value(int register);

    /** Writes a register; false when it cannot be written. */
    abstract boolean store(int register, int word);

    /** Whether it answers nothing for ever. */
    boolean dead() {
        return false;
    }

    @Override
    public final int written(byte[] bytes, int offset, int length) {
        if (dead()) {
            return -1;
        }
        if (length == 0) {
            return 0;
        }
        int wanted = bytes[offset] & 0xFF;
        int width = widths[wanted];
        if (width == 0) {
            return -1;
        }
        pointer = wanted;
        if (length == 1) {
            return 1;
        }
        if (length - 1 != width || width > Integer.BYTES) {
            return -1;
        }
        int word = 0;
        for (int i = 1; i < length; i++) {
            word = word << Byte.SIZE | bytes[offset + i] & 0xFF;
        }
        return store(wanted, word) ? length : -1;
    }

    @Override
    public final int read(byte[] into, int offset, int length) {
        if (dead()) {
            return -1;
        }
        int width = widths[pointer];
        long value = value(pointer);
        int count = Math.min(width, length);
        for (int i = 0; i < count; i++) {
            into[offset + i] = (byte) (value >> Byte.SIZE * (width - 1 - i));
        }
        return count;
    }
}
