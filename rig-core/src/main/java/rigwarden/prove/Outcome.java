package rigwarden.prove;

/**
 * What came of one thing that was looked at.
 *
 * @param part of the check that it belongs to
 * @param what its name within the part: a tap, a probe, a contact, an element; empty where the part is one thing
 * @param result how it stands
 * @param words for a person: what was found and, where it failed, what to look at
 */
public record Outcome(Part part, String what, Result result, String words) {
    /** Parts of the check, in their order. */
    public enum Part {
        AT_REST("at rest"),
        PROBE("probe"),
        LOOP("loop"),
        GROUNDS("grounds"),
        HEARTBEAT("heartbeat"),
        NO_LOAD("no load"),
        STOP("stop"),
        JOINT("joint");

        private final String words;

        Part(String words) {
            this.words = words;
        }

        /** As it is stored and printed. */
        public String words() {
            return words;
        }
    }

    /** How it stands. */
    public enum Result {
        PASSED,
        FAILED,
        /** Left out by the person. */
        SKIPPED
    }

    /** Under what it is kept: the part, and the thing within it. */
    public String kind() {
        return what.isEmpty() ? part.words() : part.words() + " " + what;
    }

    /** Whether a rig may not be trusted with this: only a loop contact may be left out, since its own date counts. */
    public boolean spoils() {
        return result == Result.FAILED || result == Result.SKIPPED && part != Part.LOOP;
    }

    static Outcome passed(Part part, String what, String words) {
        return new Outcome(part, what, Result.PASSED, words);
    }

    static Outcome failed(Part part, String what, String words) {
        return new Outcome(part, what, Result.FAILED, words);
    }

    static Outcome skipped(Part part, String what) {
        return new Outcome(part, what, Result.SKIPPED, "left out");
    }
}
