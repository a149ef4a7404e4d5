package rigwarden.findings;

import java.util.OptionalDouble;

/** What a finding comes to. What cannot be said is an answer too. */
public sealed interface Answer {
    /** A value with its budget, in the same unit. */
    record Value(double value, String unit, Budget budget) implements Answer {}

    /** It is so much or more; the budget is of the bound. */
    record AtLeast(double value, String unit, Budget budget, String because) implements Answer {}

    /** It lies between two bounds. */
    record Between(double low, double high, String unit, String because) implements Answer {}

    /** It is this one. */
    record Named(String who, String because) implements Answer {}

    /** It is one of these, and the run cannot tell which. */
    record CannotTell(String between, String because) implements Answer {}

    /**
     * Met or not met.
     *
     * @param probability of that
     * @param against the promise with its conditions
     * @param at what the measurement comes to at those conditions, in the promise's unit: the decision is made on it
     */
    record Decided(boolean met, double probability, String against, Value at) implements Answer {}

    /**
     * The measurement does not decide it.
     *
     * @param probability of being met, as far as it goes; none where it may be any amount more, or nobody knows how warm the cells were
     * @param against the promise with its conditions
     * @param at what the measurement comes to at those conditions, as far as that can be said; without a probability as it was measured
     */
    record NotDecided(String because, OptionalDouble probability, String against, Value at) implements Answer {}

    /** Nothing is said, and why. */
    record Refused(String because) implements Answer {}
}
