package rigwarden.paper;

/** Numbers as a person reads them: two digits of an uncertainty, and the value to the same place. */
final class Figures {
    private Figures() {}

    /** Decimals at which an uncertainty shows two digits. */
    static int decimals(double expanded) {
        if (!(expanded > 0) || Double.isInfinite(expanded)) {
            return 3;
        }
        return Math.clamp(1 - (int) Math.floor(Math.log10(expanded)), 0, 6);
    }

    /** An uncertainty with its two digits. */
    static String plain(double expanded) {
        return Spots.number(decimals(expanded), expanded);
    }

    /** "106.27 ± 0.27 Ah". */
    static String both(double value, double expanded, String unit) {
        int decimals = decimals(expanded);
        return (Spots.number(decimals, value) + " ± " + Spots.number(decimals, expanded) + " " + unit).strip();
    }
}
