package rigwarden.findings;

import java.util.Locale;

/** Formats alike everywhere, whatever the machine's language. */
final class Words {
    private Words() {}

    static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** A current with its sign, of a small one enough digits to tell it, for example "−0.0733 A". */
    static String amps(double amps) {
        double size = Math.abs(amps);
        return signed(size > 0 && size < 0.1 ? "%.4f" : size > 0 && size < 1 ? "%.3f" : "%.2f", amps);
    }

    /** One side of a step of the current, to a hundredth of an ampere. */
    static String side(double amps) {
        return signed("%.2f", amps);
    }

    private static String signed(String format, double amps) {
        String plain = say(format, Math.abs(amps));
        boolean nothing = plain.chars().allMatch(c -> c == '0' || c == '.');
        return (amps < 0 && !nothing ? "−" : "") + plain + " A";
    }

    static String step(StepFinding step) {
        return say("step %d, %s", step.index(), step.kind().replace('_', ' '));
    }
}
