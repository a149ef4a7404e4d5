package rigwarden.serial;

/**
 * Reads one line of numbers separated by semicolons, byte by byte (IEEE 488.2, NR1, NR2, NR3). A field may go on after
 * a comma with text that is passed over: the answer to SYST:ERR? is {@code 0,"No error"}. Total: every byte leads to a
 * state, memory is bounded, and a line feed always begins anew.
 */
final class Reply {
    /** Longest line that is taken for an answer. */
    static final int LONGEST = 256;
    private static final int FIELDS = 4;
    /** More digits than this do not change a double. */
    private static final long MANTISSA_MOST = 100_000_000_000_000L;
    private static final int EXPONENT_MOST = 99;
    private static final double[] TENS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    /** What one byte brought about. */
    enum Outcome {
        MORE,
        COMPLETE,
        GARBLED
    }

    private enum State {
        FIELD,
        SIGNED,
        WHOLE,
        POINT,
        FRACTION,
        EXPONENT,
        EXPONENT_SIGNED,
        EXPONENT_DIGITS,
        TEXT,
        QUOTED,
        LOST
    }

    private final StringBuilder text = new StringBuilder();
    private final double[] values = new double[FIELDS];
    private State state = State.FIELD;
    private int fields;
    private int seen;
    private boolean negative;
    private long mantissa;
    private int decimals;
    private int exponent;
    private boolean exponentNegative;

    /** Begins a new line. */
    void start() {
        state = State.FIELD;
        fields = 0;
        seen = 0;
        text.setLength(0);
        clear();
    }

    /** What stood in quotes. */
    String text() {
        return text.toString();
    }

    private void clear() {
        negative = false;
        mantissa = 0;
        decimals = 0;
        exponent = 0;
        exponentNegative = false;
    }

    /** Count of numbers in the completed line. */
    int fields() {
        return fields;
    }

    /** A number of the completed line. */
    double value(int field) {
        return values[field];
    }

    /** Takes one byte. After COMPLETE or GARBLED call {@link #start}. */
    Outcome take(byte next) {
        if (next == '\n') {
            return endOfLine();
        }
        if (next == '\r') {
            return Outcome.MORE;
        }
        seen++;
        state = seen > LONGEST ? State.LOST : after(next);
        return Outcome.MORE;
    }

    private Outcome endOfLine() {
        boolean whole = switch (state) {
            case WHOLE, FRACTION, EXPONENT_DIGITS -> keep() == State.FIELD;
            case TEXT -> true;
            case FIELD, SIGNED, POINT, EXPONENT, EXPONENT_SIGNED, QUOTED, LOST -> false;
        };
        return whole ? Outcome.COMPLETE : Outcome.GARBLED;
    }

    private State after(byte next) {
        return switch (state) {
            case FIELD -> sign(next);
            case SIGNED -> next == '.' ? State.POINT : digit(next, State.WHOLE);
            case WHOLE -> next == '.' ? State.FRACTION : next == 'E' || next == 'e' ? State.EXPONENT
                    : number(next, State.WHOLE);
            case POINT -> fraction(next);
            case FRACTION -> next == 'E' || next == 'e' ? State.EXPONENT
                    : isDigit(next) ? fraction(next) : end(next);
            case EXPONENT -> exponentSign(next);
            case EXPONENT_SIGNED -> exponentDigit(next);
            case EXPONENT_DIGITS -> isDigit(next) ? exponentDigit(next) : end(next);
            case TEXT -> next == '"' ? State.QUOTED : next == ';' ? State.FIELD : State.TEXT;
            case QUOTED -> next == '"' ? State.TEXT : quoted(next);
            case LOST -> State.LOST;
        };
    }

    private State quoted(byte next) {
        text.append(next >= ' ' && next <= '~' ? (char) next : '?');
        return State.QUOTED;
    }

    private State sign(byte next) {
        clear();
        if (next == ' ') {
            return State.FIELD;
        }
        negative = next == '-';
        if (negative || next == '+') {
            return State.SIGNED;
        }
        return next == '.' ? State.POINT : digit(next, State.WHOLE);
    }

    private State number(byte next, State here) {
        return isDigit(next) ? digit(next, here) : end(next);
    }

    private State digit(byte next, State then) {
        if (!isDigit(next)) {
            return State.LOST;
        }
        if (mantissa < MANTISSA_MOST) {
            mantissa = mantissa * 10 + (next - '0');
        } else {
            decimals--;
        }
        return then;
    }

    private State fraction(byte next) {
        if (isDigit(next)) {
            decimals++;
        }
        return digit(next, State.FRACTION);
    }

    private State exponentSign(byte next) {
        exponentNegative = next == '-';
        return exponentNegative || next == '+' ? State.EXPONENT_SIGNED : exponentDigit(next);
    }

    private State exponentDigit(byte next) {
        if (!isDigit(next)) {
            return State.LOST;
        }
        exponent = exponent * 10 + (next - '0');
        return exponent > EXPONENT_MOST ? State.LOST : State.EXPONENT_DIGITS;
    }

    private State end(byte next) {
        if (next == ';') {
            return keep();
        }
        return next == ',' ? keep() == State.FIELD ? State.TEXT : State.LOST : State.LOST;
    }

    private State keep() {
        if (fields == FIELDS) {
            return State.LOST;
        }
        int power = (exponentNegative ? -exponent : exponent) - decimals;
        double size = power >= 0 ? mantissa * ten(power) : mantissa / ten(-power);
        values[fields++] = negative ? -size : size;
        return State.FIELD;
    }

    private static double ten(int power) {
        return power < TENS.length ? TENS[power] : Math.pow(10, power);
    }

    private static boolean isDigit(byte next) {
        return next >= '0' && next <= '9';
    }
}
