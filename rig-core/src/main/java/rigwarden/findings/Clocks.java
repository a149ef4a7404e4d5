package rigwarden.findings;

/**
 * Range of time constants that a body may have, each as likely as twice of it.
 *
 * @param shortHours least, h
 * @param longHours greatest, h
 */
record Clocks(double shortHours, double longHours) {
    /** Of a large cell: one to four hours (common practice, no source), half of one where the cables cool it too (pack model). */
    static final Clocks LARGE = new Clocks(0.5, 4);

    Clocks {
        if (!(shortHours > 0) || !(longHours > shortHours)) {
            throw new IllegalArgumentException("no range of time constants: " + shortHours + "…" + longHours + " h");
        }
    }

    /** One of so many, equally spaced in their logarithm. */
    double tried(int i, int of) {
        return shortHours * Math.pow(longHours / shortHours, i / (of - 1.0));
    }

    /** Slope and height of a rise are read from so much of the past: short beside every one of them, h. */
    double lookBackHours() {
        return shortHours / 3;
    }
}
