package rigwarden.emulated;

/** The answers of an instrument, built without strings: parts joined by semicolons, a line end after the message. */
final class ScpiAnswer {
    private static final int CAPACITY = 2048;
    private static final int DECIMALS = 5;
    private static final double SCALE = 1e5;
    private static final double WIDEST = 1e12;
    private static final int LONGEST_NUMBER = 20;

    private final byte[] bytes = new byte[CAPACITY];
    private final byte[] digits = new byte[LONGEST_NUMBER];
    private int length;
    private boolean begun;
    private boolean overflowed;

    ScpiAnswer copy() {
        ScpiAnswer copy = new ScpiAnswer();
        System.arraycopy(bytes, 0, copy.bytes, 0, length);
        copy.length = length;
        return copy;
    }

    void begin() {
        begun = false;
        overflowed = false;
    }

    /** Ends the message; false when its answers did not fit, in which case none are left. */
    boolean end() {
        if (begun) {
            put('\n');
        }
        if (overflowed) {
            length = 0;
        }
        return !overflowed;
    }

    ScpiAnswer part() {
        if (begun) {
            put(';');
        }
        begun = true;
        return this;
    }

    ScpiAnswer put(char letter) {
        if (length == CAPACITY) {
            overflowed = true;
        } else {
            bytes[length++] = (byte) letter;
        }
        return this;
    }

    ScpiAnswer text(String text) {
        for (int i = 0; i < text.length(); i++) {
            put(text.charAt(i));
        }
        return this;
    }

    ScpiAnswer whole(long number) {
        return fixed(number, 0);
    }

    /** NR2 with five decimals; 9.91E+37, the standard's word for not a number, for what cannot be shown so. */
    ScpiAnswer number(double number) {
        if (!(Math.abs(number) < WIDEST)) {
            return text("9.91E+37");
        }
        return fixed(Math.round(number * SCALE), DECIMALS);
    }

    private ScpiAnswer fixed(long scaled, int decimals) {
        if (scaled < 0) {
            put('-');
        }
        long rest = Math.abs(scaled);
        int count = 0;
        do {
            digits[count++] = (byte) ('0' + rest % 10);
            rest /= 10;
        } while (rest > 0 || count <= decimals);
        while (count > 0) {
            if (count == decimals) {
                put('.');
            }
            put((char) digits[--count]);
        }
        return this;
    }

    int pending() {
        return length;
    }

    int take(byte[] into) {
        int count = Math.min(length, into.length);
        System.arraycopy(bytes, 0, into, 0, count);
        System.arraycopy(bytes, count, bytes, 0, length - count);
        length -= count;
        return count;
    }

    /** Drops answers from the end until no more than so many bytes are left. */
    void cut(int left) {
        length = Math.min(length, left);
    }
}
