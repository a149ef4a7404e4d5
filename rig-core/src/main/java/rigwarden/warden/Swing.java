package rigwarden.warden;

import java.util.Optional;

/**
 * What the warden has counted of the charge that went into the cells and out of them, as it is handed to a run that goes on from
 * another. All in A·s from the first scan of the first of these runs, positive into the cells.
 *
 * @param ampSeconds sum up to now
 * @param filled sum when the highest cell was last as good as full; empty before
 * @param filledAmps current then, A
 * @param emptied sum when the lowest cell was last as good as empty; empty before
 * @param taken what lay between the two; empty where no discharge went from full to empty
 */
public record Swing(
        double ampSeconds, Optional<Double> filled, double filledAmps, Optional<Double> emptied, Optional<Double> taken) {
    /** Nothing counted yet. */
    public static final Swing NONE = new Swing(0, Optional.empty(), 0, Optional.empty(), Optional.empty());
}
