package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A capacity held against a rating, by a guarded decision (JCGM 106:2012, 8.3): met or not met only where the whole
 * expanded uncertainty lies on one side, which is where its probability, by the same distribution, is 97.7 % or more.
 */
public final class Verdict {
    /** Coverage of ± U leaves half of the rest on either side. */
    private static final double SURE = (1 + Budget.COVERAGE) / 2;

    private Verdict() {}

    /** The decision, with its probability. */
    public static Answer of(Capacity capacity, Rating rating) {
        boolean energy = rating.unit().equals("Wh");
        double value = energy ? capacity.wattHours().value() : capacity.ampHours().value();
        Budget own = energy ? capacity.energyBudget() : capacity.budget();
        double volts = capacity.ampHours().value() == 0 ? 0 : capacity.wattHours().value() / capacity.ampHours().value();
        double missing = capacity.missingAmpHours() * (energy ? volts : 1);
        boolean warmthKnown = !Double.isNaN(capacity.bodyCelsius());
        double away = warmthKnown ? rating.at().celsius() - capacity.bodyCelsius() : 0;
        double u = capacity.bodyExpandedKelvin();
        // the cells may be nearer or farther by what their probes may be wrong by, and the coefficient is anything from nothing to its most
        double least = value * rating.perKelvin() * Math.min(0, away - u);
        double most = value * rating.perKelvin() * Math.max(0, away + u);
        List<Budget.Term> terms = new ArrayList<>(own.terms());
        terms.add(temperature((most - least) / 2, value * rating.perKelvin() * u, Math.abs(away) > u));
        terms.add(Budget.limits("missing from full", missing / 2));
        Answer.Value rated = new Answer.Value(value + (most + least) / 2 + missing / 2, rating.unit(), new Budget(terms));
        double met = rated.budget().below(rated.value() - rating.amount());
        String against = rating.promise() + " " + rating.at().words();
        Answer.Value bound = new Answer.Value(value + least, rating.unit(), own);
        double boundMet = own.below(bound.value() - rating.amount());
        if (!capacity.interrupted() && boundMet >= SURE && warmthKnown && lessThanRated(capacity, rating)) {
            return new Answer.Decided(true, Math.max(met, boundMet), against, met >= boundMet ? rated : bound);
        }
        String outside = outside(capacity, rating, value);
        if (!outside.isEmpty()) {
            String because = "not decided at rated conditions: " + outside;
            return capacity.lowerBound() || !warmthKnown
                    ? new Answer.NotDecided(because, OptionalDouble.empty(), against, new Answer.Value(value, rating.unit(), own))
                    : new Answer.NotDecided(because, OptionalDouble.of(met), against, rated);
        }
        if (met >= SURE || 1 - met >= SURE) {
            return new Answer.Decided(met >= SURE, Math.max(met, 1 - met), against, rated);
        }
        return new Answer.NotDecided(Words.say("not decided by this measurement: %.2f %s and its %.2f %s ± %.2f %s at the rating's temperature lie"
                + " within each other; the largest term is the %s", rating.amount(), rating.unit(), rated.value(), rating.unit(),
                rated.budget().expanded(), rating.unit(), rated.budget().largest().name()), OptionalDouble.of(met), against, rated);
    }

    private static Budget.Term temperature(double half, double halfAtRating, boolean away) {
        Budget.Term term = Budget.limits(away ? "temperature coefficient" : "temperature of the cells", half);
        return away ? term.leaving(Budget.limits("", halfAtRating).standard()) : term;
    }

    /** Whether all that was unlike the rating's conditions can only have cost charge, but for the temperature. */
    private static boolean lessThanRated(Capacity capacity, Rating rating) {
        return capacity.rateC() >= rating.at().leastC() && capacity.endVolts() >= rating.at().cutOffVolts() - capacity.endPlayVolts();
    }

    private static String outside(Capacity capacity, Rating rating, double value) {
        if (capacity.interrupted()) {
            return "the test was interrupted, and such a one decides neither for nor against a rating";
        }
        if (capacity.lowerBound()) {
            return "the capacity is a lower bound only";
        }
        if (value <= 0) {
            return "nothing came out of it, or its sums of energy were never written";
        }
        if (Double.isNaN(capacity.bodyCelsius())) {
            return "nobody knows how warm the cells were";
        }
        return elsewhere(capacity, rating);
    }

    /** Whether it was measured at the temperature and rate at which the rating holds, and down to its cut-off. */
    public static boolean atItsConditions(Capacity capacity, Rating rating) {
        return !Double.isNaN(capacity.bodyCelsius()) && elsewhere(capacity, rating).isEmpty();
    }

    private static String elsewhere(Capacity capacity, Rating rating) {
        if (Math.abs(capacity.bodyCelsius() - rating.at().celsius()) + capacity.bodyExpandedKelvin() > rating.at().nearKelvin()) {
            return Words.say("the cells were at %.1f °C, give or take %.1f K by their probes, and the rating holds at %.0f ± %.0f °C",
                    capacity.bodyCelsius(), capacity.bodyExpandedKelvin(), rating.at().celsius(), rating.at().nearKelvin());
        }
        if (capacity.rateC() < rating.at().leastC() || capacity.rateC() > rating.at().mostC()) {
            return Words.say("the rate was %.2f C, the rating holds from %.2f to %.2f C", capacity.rateC(), rating.at().leastC(),
                    rating.at().mostC());
        }
        if (!(Math.abs(capacity.endVolts() - rating.at().cutOffVolts()) <= capacity.endPlayVolts())) {
            return Words.say("it was ended with the lowest cell at %.3f V, give or take %.3f V, and the rating holds down to %.2f V",
                    capacity.endVolts(), capacity.endPlayVolts(), rating.at().cutOffVolts());
        }
        return "";
    }
}
