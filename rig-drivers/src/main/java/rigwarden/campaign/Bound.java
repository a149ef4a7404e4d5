package rigwarden.campaign;

import org.hipparchus.distribution.continuous.BetaDistribution;

/** What so many cases say about all that could have been drawn. */
final class Bound {
    private static final double SURE = 0.95;

    private Bound() {}

    /**
     * Upper bound of a probability, one-sided, 95 % sure, after Clopper and Pearson; with none seen it is close to 3 ÷ cases, the rule of three.
     *
     * @param seen how often, 0…cases
     * @param cases from 1
     */
    static double upper(long seen, long cases) {
        return seen >= cases ? 1 : new BetaDistribution(seen + 1.0, cases - (double) seen).inverseCumulativeProbability(SURE);
    }
}
