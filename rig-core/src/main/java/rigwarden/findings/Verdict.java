package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * A capacity held against a rating, by a guarded decision (JCGM 106:2012, 8.3): met or not met only where the whole
 * expanded uncertainty lies on one side.
 */
public final class Verdict {
    private Verdict() {}

    /** The decision, with its probability. */
    public static Answer of(Capacity capacity, Rating rating) {
        boolean warmthKnown = !Double.isNaN(capacity.bodyCelsius());
        double away = warmthKnown ? rating.celsius() - capacity.bodyCelsius() : 0;
        double value = capacity.ampHours().value();
        List<Budget.Term> terms = new ArrayList<>(capacity.budget().terms());
        double half = value * rating.perKelvin() * away / 2;
        terms.add(Budget.limits("temperature coefficient", half));
        terms.add(Budget.limits("missing from full", capacity.missingAmpHours() / 2));
        Budget budget = new Budget(terms);
        double rated = value + half + capacity.missingAmpHours() / 2;
        double probability = probability(rated, budget, rating.ampHours());
        String outside = outside(capacity, rating);
        double leastRated = away >= 0 ? value : value + 2 * half;
        boolean safelyMet = warmthKnown && capacity.rateC() >= rating.leastC()
                && leastRated - capacity.budget().expanded() >= rating.ampHours();
        if (safelyMet) {
            return new Answer.Decided(true, Math.max(probability, probability(leastRated, capacity.budget(), rating.ampHours())),
                    against(rating));
        }
        if (!outside.isEmpty()) {
            return new Answer.NotDecided("not decided at rated conditions: " + outside, probability);
        }
        if (rated + budget.expanded() < rating.ampHours()) {
            return new Answer.Decided(false, 1 - probability, against(rating));
        }
        if (rated - budget.expanded() >= rating.ampHours()) {
            return new Answer.Decided(true, probability, against(rating));
        }
        return new Answer.NotDecided(Words.say("%.2f Ah and the measurement's %.2f Ah ± %.2f Ah at the rating's temperature lie"
                + " within each other; the largest term is the %s", rating.ampHours(), rated, budget.expanded(),
                budget.largest().name()), probability);
    }

    private static String against(Rating rating) {
        return Words.say("rated %.1f Ah at %.0f °C", rating.ampHours(), rating.celsius());
    }

    /** Probability that the true value is the rating or more (JCGM 106:2012, 7.3, a normal distribution). */
    static double probability(double value, Budget budget, double rating) {
        double standard = budget.combined();
        return standard == 0 ? value >= rating ? 1 : 0
                : new NormalDistribution(0, 1).cumulativeProbability((value - rating) / standard);
    }

    private static String outside(Capacity capacity, Rating rating) {
        if (capacity.interrupted()) {
            return "the test was interrupted, and such a one never decides against a rating";
        }
        if (capacity.lowerBound()) {
            return "the capacity is a lower bound only";
        }
        if (Double.isNaN(capacity.bodyCelsius())) {
            return "nobody knows how warm the cells were";
        }
        if (Math.abs(capacity.bodyCelsius() - rating.celsius()) > rating.nearKelvin()) {
            return Words.say("the cells were at %.1f °C, the rating holds at %.0f ± %.0f °C", capacity.bodyCelsius(),
                    rating.celsius(), rating.nearKelvin());
        }
        if (capacity.rateC() < rating.leastC() || capacity.rateC() > rating.mostC()) {
            return Words.say("the rate was %.2f C, the rating holds from %.2f to %.2f C", capacity.rateC(), rating.leastC(),
                    rating.mostC());
        }
        return "";
    }
}
