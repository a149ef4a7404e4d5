package rigwarden.serial;

/** Decimal numbers in and out of byte buffers, as IEEE 488.2 writes them (NR1, NR2, NR3); no allocation. */
final class Numbers {
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12};

    private Numbers() {}

    /** Writes a number with four decimals; returns the next free place. */
    static int put(byte[] into, int at, double value) {
        long scaled = Math.round(value * 10_000);
        int place = at;
        if (scaled < 0) {
            into[place++] = '-';
            scaled = -scaled;
        }
        long whole = scaled / 10_000;
        int digits = 1;
        for (long rest = whole; rest >= 10; rest /= 10) {
            digits++;
        }
        for (int i = digits - 1; i >= 0; i--) {
            into[place + i] = (byte) ('0' + whole % 10);
            whole /= 10;
        }
        place += digits;
        into[place++] = '.';
        long part = scaled % 10_000;
        for (int i = 3; i >= 0; i--) {
            into[place + i] = (byte) ('0' + part % 10);
            part /= 10;
        }
        return place + 4;
    }

    /** Reads a whole field as a number; NaN when it is none. Only this package sees the NaN. */
    static double get(byte[] from, int start, int end) {
        int at = start;
        boolean minus = at < end && from[at] == '-';
        if (at < end && (from[at] == '-' || from[at] == '+')) {
            at++;
        }
        double mantissa = 0;
        int digits = 0;
        int decimals = 0;
        boolean point = false;
        for (; at < end; at++) {
            byte c = from[at];
            if (c >= '0' && c <= '9' && digits < 15) {
                mantissa = mantissa * 10 + (c - '0');
                digits++;
                decimals += point ? 1 : 0;
            } else if (c == '.' && !point) {
                point = true;
            } else {
                break;
            }
        }
        int exponent = 0;
        if (at < end && (from[at] == 'E' || from[at] == 'e')) {
            at++;
            boolean down = at < end && from[at] == '-';
            if (at < end && (from[at] == '-' || from[at] == '+')) {
                at++;
            }
            int first = at;
            for (; at < end && at < first + 2 && from[at] >= '0' && from[at] <= '9'; at++) {
                exponent = exponent * 10 + (from[at] - '0');
            }
            if (at == first) {
                return Double.NaN;
            }
            exponent = down ? -exponent : exponent;
        }
        if (digits == 0 || at != end) {
            return Double.NaN;
        }
        int shift = exponent - decimals;
        double size = shift >= 0 && shift < TENS.length
                ? mantissa * TENS[shift]
                : shift < 0 && -shift < TENS.length ? mantissa / TENS[-shift] : mantissa * Math.pow(10, shift);
        return minus ? -size : size;
    }
}
