package rigwarden.kernel;

import rigwarden.emulated.I2cTarget;

/** A chip of 256 bytes and a pointer, as a serial memory has it; it can fall silent or stop answering half way. */
final class Memory implements I2cTarget {
    private static final int SIZE = 256;

    private final byte[] bytes = new byte[SIZE];
    private int pointer;
    private int most = SIZE;
    private boolean silent;

    synchronized void set(int at, int... values) {
        for (int i = 0; i < values.length; i++) {
            bytes[at + i] = (byte) values[i];
        }
    }

    synchronized int get(int at) {
        return bytes[at] & 0xFF;
    }

    synchronized void answersAtMost(int count) {
        most = count;
    }

    synchronized void silent(boolean says) {
        silent = says;
    }

    @Override
    public synchronized int written(byte[] from, int offset, int length) {
        if (silent) {
            return -1;
        }
        pointer = from[offset] & 0xFF;
        System.arraycopy(from, offset + 1, bytes, pointer, length - 1);
        return length;
    }

    @Override
    public synchronized int read(byte[] into, int offset, int length) {
        if (silent) {
            return -1;
        }
        int count = Math.min(length, most);
        System.arraycopy(bytes, pointer, into, offset, count);
        return count;
    }
}
