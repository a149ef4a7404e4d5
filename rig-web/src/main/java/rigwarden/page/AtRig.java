package rigwarden.page;

import java.util.Optional;
import java.util.function.Supplier;

/** What the person at the rig is asked for, as the page may show it, and where an answer that is given on the page goes. */
public interface AtRig {
    /**
     * One thing that is asked.
     *
     * @param words for the person; never empty
     * @param answer takes whether it is done, or so; empty where the page may not answer
     */
    record Asked(String words, Optional<Ear> answer) {}

    /** Takes an answer. Any thread; never waits. */
    interface Ear {
        void hear(boolean so);
    }

    /** What is asked now; empty for nothing. */
    Optional<Asked> asked();

    /** Nobody is asked for anything. */
    static AtRig nobody() {
        return Optional::empty;
    }

    /** Reads it anew each time. */
    static AtRig of(Supplier<Optional<Asked>> now) {
        return now::get;
    }
}
