package rigwarden.serial;

/** What stands at the other end, and its subsystem (SCPI-1999 volume 2, OUTPut and INPut). */
public enum InstrumentKind {
    SOURCE("OUTP"),
    SINK("INP");

    private final String word;

    InstrumentKind(String word) {
        this.word = word;
    }

    String word() {
        return word;
    }
}
