package rigwarden.elsewhere;

/** What was wrong with a line of a log, and what became of it. */
public enum Fault {
    WRONG_WIDTH("a line of another width than the heading: left out"),
    NO_TIME("a line without a time: left out"),
    TIME_REPEATED("a line with the time of the one before: left out"),
    TIME_ASTRAY("a line whose time lies before that of the one before, and the next goes on: left out"),
    TIME_WENT_BACK("a line from which on the time is earlier: the charge of its step is not told"),
    TIME_BEGAN_ANEW("a new step with which the time begins anew: it was counted on"),
    COUNT_BEGAN_ANEW("a line with which the instrument's count begins anew: it was counted on"),
    GAP("a line later than usual after the one before: what may have flowed is in the uncertainty, unless a count went on over it"),
    EMPTY("a reading that is not there"),
    OVERFLOW("a reading beyond what the map allows: not taken for one"),
    UNREADABLE("a reading that is no number"),
    STEP_NOT_KNOWN("a step that the map does not name: in no finding"),
    END_NOT_SHOWN("a step whose end the map states and the lines do not show: taken as stopped");

    private final String words;

    Fault(String words) {
        this.words = words;
    }

    /** One of its kind, and what became of it. */
    public String words() {
        return words;
    }
}
