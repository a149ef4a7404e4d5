package rigwarden.findings;

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

    /** Met or not met, with the probability of that. */
    record Decided(boolean met, double probability, String against) implements Answer {}

    /** The measurement does not decide it; the probability is that of being met. */
    record NotDecided(String because, double probability) implements Answer {}

    /** Nothing is said, and why. */
    record Refused(String because) implements Answer {}
}
