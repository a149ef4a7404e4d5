package rigwarden.serial;

/** What stands at the other end, and its subsystem (SCPI-1999 volume 2, OUTPut and INPut). */
public enum InstrumentKind {
    SOURCE("OUTP", true),
    SINK("INP", false);

    private final String word;
    private final boolean limitsVolts;

    InstrumentKind(String word, boolean limitsVolts) {
        this.word = word;
        this.limitsVolts = limitsVolts;
    }

    /** A source is told volts and guards its own volts; a sink has neither setting and guards its amperes. */
    boolean limitsVolts() {
        return limitsVolts;
    }

    String word() {
        return word;
    }
}
