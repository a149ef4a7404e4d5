package rigwarden.live;

/** What a run is about, as a person at a distance needs to know it. */
public enum Phase {
    /** Nothing was started. */
    IDLE("waits for a start"),
    /** The first healthy scans before anything is energised. */
    PROVING("looks at every channel before anything is switched on"),
    /** Before a step's energy: too warm, too cold, or not yet at rest. */
    WAITING("waits until the step may begin"),
    /** Between open and current. */
    CLOSING("closes the path, stage by stage"),
    /** Current is ordered. */
    CURRENT("current is on"),
    /** Everything is open, by programme. */
    RESTING("rests, everything open"),
    /** The latched safe state. */
    TRIPPED("tripped: everything is ordered off"),
    /** Over. */
    FINISHED("is over, everything open");

    private final String words;

    Phase(String words) {
        this.words = words;
    }

    /** In words, after "the run". */
    public String words() {
        return words;
    }
}
