package rigwarden.emulated;

/**
 * Reads a decimal parameter, NRf with an optional unit (IEEE 488.2 section 7.7.2), into a field instead of an object.
 */
final class ScpiNumber {
    private static final double[] POWERS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };
    private static final long MANTISSA_FULL = 100_000_000_000_000L;
    private static final int EXPONENT_FULL = 999;

    /** The last number read. */
    double value;

    private byte[] text;
    private int at;
    private int end;
    private long mantissa;
    private int scale;

    /**
     * Reads one number.
     *
     * @param unit the letter of the unit that may follow, upper case
     * @return the SCPI error number; 0, the standard's "No error", when {@link #value} holds the number
     */
    int read(byte[] from, int start, int stop, char unit) {
        text = from;
        at = start;
        end = stop;
        mantissa = 0;
        scale = 0;
        boolean negative = sign();
        int digits = digits(0);
        if (at < end && text[at] == '.') {
            at++;
            digits += digits(-1);
        }
        if (digits == 0) {
            return at < end && isLetter(text[at]) ? -104 : -120;
        }
        if (at < end && upper(text[at]) == 'E') {
            at++;
            boolean down = sign();
            int exponent = 0;
            int begun = at;
            while (at < end && isDigit(text[at])) {
                exponent = Math.min(EXPONENT_FULL, exponent * 10 + text[at++] - '0');
            }
            if (at == begun) {
                return -120;
            }
            scale += down ? -exponent : exponent;
        }
        double size = scaled();
        value = negative ? -size : size;
        return suffix(unit);
    }

    private int suffix(char unit) {
        while (at < end && text[at] == ' ') {
            at++;
        }
        if (at < end && upper(text[at]) == 'M' && at + 1 < end) {
            value /= 1000;
            at++;
        }
        if (at < end && upper(text[at]) == unit) {
            at++;
        }
        return at == end ? 0 : -131;
    }

    private double scaled() {
        if (mantissa == 0) {
            return 0;
        }
        double size = mantissa;
        int power = scale;
        while (power > 0) {
            int step = Math.min(power, POWERS.length - 1);
            size *= POWERS[step];
            power -= step;
        }
        while (power < 0) {
            int step = Math.min(-power, POWERS.length - 1);
            size /= POWERS[step];
            power += step;
        }
        return size;
    }

    /** Digits beyond the fifteenth only count for their place. */
    private int digits(int place) {
        int begun = at;
        while (at < end && isDigit(text[at])) {
            if (mantissa < MANTISSA_FULL) {
                mantissa = mantissa * 10 + text[at] - '0';
                scale += place;
            } else {
                scale += place + 1;
            }
            at++;
        }
        return at - begun;
    }

    private boolean sign() {
        if (at < end && (text[at] == '+' || text[at] == '-')) {
            return text[at++] == '-';
        }
        return false;
    }

    static boolean isDigit(byte letter) {
        return letter >= '0' && letter <= '9';
    }

    static boolean isLetter(byte letter) {
        int upper = upper(letter);
        return upper >= 'A' && upper <= 'Z';
    }

    static int upper(byte letter) {
        return letter >= 'a' && letter <= 'z' ? letter - ('a' - 'A') : letter;
    }
}
