package rigwarden.campaign;

/** A night that is no ground for a campaign: without any fault it trips, or does not end. */
public final class UnfitNight extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnfitNight(String words) {
        super(words);
    }
}
