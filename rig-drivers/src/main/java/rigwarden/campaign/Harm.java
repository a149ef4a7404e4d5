package rigwarden.campaign;

/**
 * Something that the model's physics call unsafe.
 *
 * @param what kind of it
 * @param part where; empty where the kind says it
 * @param value what was reached: V, °C, share of the rating, A
 * @param nanos when it was first seen
 * @param off whether everything had been ordered off for two seconds by then
 * @param atOnce whether it was there and gone again within the scan in which the fault came: nothing that looks once a scan could have known
 */
public record Harm(What what, String part, double value, long nanos, boolean off, boolean atOnce) {
    /** Kinds of harm, as section 6 of the safety page lists them. */
    public enum What {
        /** A cell above 3.75 V. */
        CELL_HIGH("cell above 3.75 V"),
        /** A cell below 2.0 V. */
        CELL_LOW("cell below 2.0 V"),
        /** A node above 75 °C. */
        HOT("node above 75 °C"),
        /** A part above 125 % of its rating for 10 s, or above 150 % for 1 s. */
        OVERLOAD("part overloaded"),
        /** More than 1 A two seconds after Off. */
        NOT_OFF("current after Off");

        private final String words;

        What(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
