package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;

/** How the capacity falls with the current: t₁/t₂ = (I₂/I₁)^k between two tests of the same cells. */
public final class RateEffect {
    private static final double NEAR_K = 3;
    private static final double APART = 1.5;

    private RateEffect() {}

    /**
     * The exponent at one temperature: what the warmer of the two gave for its warmth is somewhere between nothing and all that a rating's
     * temperature coefficient allows, and half of that is taken off.
     *
     * @param slow capacity at the lower rate
     * @param fast capacity at the higher rate
     */
    public static Answer exponent(Capacity slow, Capacity fast) {
        if (slow.lowerBound() || fast.lowerBound() || slow.interrupted() || fast.interrupted()) {
            return new Answer.Refused("one of the two is a lower bound or was interrupted");
        }
        if (Double.isNaN(slow.bodyCelsius() + fast.bodyCelsius())) {
            return new Answer.Refused("nobody knows how warm the cells were: the temperature's part cannot be told from the rate's");
        }
        if (Math.abs(slow.bodyCelsius() - fast.bodyCelsius()) >= NEAR_K) {
            return new Answer.Refused(Words.say("the cells were at %.1f and %.1f °C: with 3 K or more between them the"
                    + " temperature's part cannot be told from the rate's", slow.bodyCelsius(), fast.bodyCelsius()));
        }
        if (slow.start() != fast.start()) {
            return new Answer.Refused("the two did not start alike: " + slow.start() + " and " + fast.start());
        }
        if (fast.rateC() < APART * slow.rateC()) {
            return new Answer.Refused("the two rates lie too near to each other");
        }
        double currents = Math.log(fast.rateC() / slow.rateC());
        double hours = slow.ampHours().value() / slow.rateC() / (fast.ampHours().value() / fast.rateC());
        List<Budget.Term> terms = new ArrayList<>();
        Budgets.ofRatio(part("slow test", slow), part("fast test", fast), t -> t.nature().shared())
                .forEach(t -> terms.add(t.times(1 / currents)));
        terms.add(missing("missing from full, slow test", slow, currents));
        terms.add(missing("missing from full, fast test", fast, currents));
        double warmth = Rating.PER_KELVIN * (fast.bodyCelsius() - slow.bodyCelsius()) / 2 / currents;
        terms.add(Budget.limits("temperature between the two", warmth));
        return new Answer.Value(Math.log(hours) / currents + warmth, "", new Budget(terms));
    }

    private static Budgets.Part part(String word, Capacity capacity) {
        return new Budgets.Part(word, capacity.ampHours().value(), capacity.budget());
    }

    private static Budget.Term missing(String name, Capacity capacity, double currents) {
        return Budget.standard(name, capacity.missingAmpHours() / Math.sqrt(12) / capacity.ampHours().value() / currents);
    }

    /**
     * Capacity at another rate, from an exponent.
     *
     * @throws IllegalArgumentException outside the tested rates, where nothing is known
     */
    public static double ampHoursAt(double rateC, Capacity slow, Capacity fast, double exponent) {
        if (rateC < slow.rateC() || rateC > fast.rateC()) {
            throw new IllegalArgumentException(Words.say("%.2f C is outside the tested rates %.2f to %.2f C", rateC, slow.rateC(),
                    fast.rateC()));
        }
        return slow.ampHours().value() * Math.pow(rateC / slow.rateC(), 1 - exponent);
    }

    /** Hours that a charge lasts at a current, from a rating over some hours (Peukert's form). */
    public static double hours(double ampHours, double overHours, double amps, double exponent) {
        return overHours * Math.pow(ampHours / (amps * overHours), exponent);
    }
}
