package rigwarden.paper;

/**
 * A column of a table that is handed on, as whoever reads it must know it.
 *
 * @param name machine-readable, for example {@code cell_01_v}
 * @param title the header's cell, to the letter
 * @param ucum unit by the Unified Code for Units of Measure, for example {@code A.h}; {@code 1} of a pure number; empty of words
 * @param type of its fields
 * @param required whether no field of it is ever empty
 * @param description meaning, sign and origin in words
 * @param property address of what an open vocabulary says of it; empty where none does
 */
record Column(String name, String title, String ucum, Type type, boolean required, String description, String property) {
    /** What a field holds; the words are those of XML Schema, which CSVW takes its types from. */
    enum Type {
        NUMBER("decimal"),
        NOT_NEGATIVE("decimal"),
        COUNT("nonNegativeInteger"),
        WORDS("string");

        private final String base;

        Type(String base) {
            this.base = base;
        }

        String base() {
            return base;
        }
    }

    /** One of our own, whose header is its name. */
    static Column own(String name, String ucum, Type type, boolean required, String description) {
        return new Column(name, name, ucum, type, required, description, "");
    }
}
