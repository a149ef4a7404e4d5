package rigwarden.marks;

/** What a check stands on. */
public enum Standing {
    /** A value that a document prints, which was read; with the place. */
    PUBLISHED("published"),
    /** What the trade does, without a source. */
    COMMON_PRACTICE("common practice"),
    /** A document that was not read; the value is remembered. */
    FROM_MEMORY("from memory"),
    /** Worked here, in closed form or by the model's own truth: asserted, cites nothing. */
    WORKED("worked");

    private final String words;

    Standing(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
