package rigwarden.findings;

import java.util.List;

/** What came of holding a figure of one run against the same of an earlier one. */
public sealed interface Change {
    /** What was compared, for example "capacity at 0.50 C". */
    String what();

    /**
     * Both figures are there, at like conditions.
     *
     * @param kind of finding
     * @param what was compared
     * @param unit of all figures
     * @param earlier figure
     * @param later figure
     * @param difference later less earlier, with what the conditions explain taken off
     * @param least that would have been seen
     * @param budget of the difference
     * @param alike terms that err alike in both runs and so fall out
     * @param notes what a reader must know besides
     */
    record Held(Kind kind, String what, String unit, double earlier, double later, double difference, double least, Budget budget,
            List<String> alike, List<String> notes) implements Change {
        public Held {
            alike = List.copyOf(alike);
            notes = List.copyOf(notes);
        }

        /** Whether there is a difference that these two runs can measure. */
        public boolean seen() {
            return Math.abs(difference) > least;
        }
    }

    /** They are not held against each other, and why. */
    record NotHeld(Kind kind, String what, String because) implements Change {}
}
