package rigwarden.chip.max31856;

/**
 * All that the driver remembers between scans.
 *
 * @param asked whether a conversion was seen to begin since the last reading: only then is a finished one a new one
 * @param waited readings in a row that found it not finished
 */
public record Max31856State(boolean asked, int waited) {
    /** Nothing asked for. */
    public static final Max31856State FRESH = new Max31856State(false, 0);
}
