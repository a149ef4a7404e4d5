package rigwarden.warden;

/** When a trip may be cleared. Each needs the arm input besides. */
public enum Clearing {
    /** The breach has been gone for two seconds. */
    QUIET("breach gone for 2 s", 2_000_000_000L, 0),
    /** The place is five kelvin below the limit, and has been quiet for five minutes. */
    COOLED("5 K below the limit, quiet for 5 min", 300_000_000_000L, -5),
    /** The place is five kelvin above the limit, and has been quiet for five minutes. */
    WARMED("5 K above the limit, quiet for 5 min", 300_000_000_000L, 5),
    /** A rise is over, and has been for five minutes. */
    CALM("quiet for 5 min", 300_000_000_000L, 0),
    /** Only a passed contactor proof. */
    PROOF("a passed contactor proof", Long.MAX_VALUE, 0),
    /** A notice ends with its cause. */
    BY_ITSELF("by itself", 0, 0);

    private final String words;
    final long quietNanos;
    final double marginKelvin;

    Clearing(String words, long quietNanos, double marginKelvin) {
        this.words = words;
        this.quietNanos = quietNanos;
        this.marginKelvin = marginKelvin;
    }

    /** For tables and notices. */
    public String words() {
        return words;
    }
}
