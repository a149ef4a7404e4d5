package rigwarden.rigfile;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as a person writes them. */
final class Figures {
    private static final MathContext SIX = new MathContext(6);

    private Figures() {}

    /** At most six significant figures, no exponent, no trailing zeros. */
    static String of(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        return new BigDecimal(value, SIX).stripTrailingZeros().toPlainString();
    }

    static String of(double value, String unit) {
        return unit.isEmpty() ? of(value) : of(value) + " " + unit;
    }

    static String range(double lowest, double highest, String unit) {
        return of(lowest) + "…" + of(highest, unit);
    }
}
