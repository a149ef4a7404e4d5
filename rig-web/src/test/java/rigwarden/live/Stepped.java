package rigwarden.live;

/** Lets tests of other packages look at a run by hand. */
public final class Stepped {
    private Stepped() {}

    /** Looks at all that waits and returns the newest snapshot. */
    public static Snapshot look(Live live) {
        live.step();
        return live.now().orElseThrow();
    }
}
