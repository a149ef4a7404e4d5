package rigwarden.findings;

/**
 * How a term errs from one result to the next: what it leaves in a sum, a difference or a ratio of several results by the same
 * instruments (JCGM 100:2008, 5.2: correlated parts are added as they are, with their signs).
 */
public enum Nature {
    /** The same part of every current: of shunt and amplifier by their limits, or of their calibration. The same in every run until they change. */
    GAIN,
    /** A part of every current that hangs on how warm the shunt is, and so another one in each step. */
    WARMTH,
    /** The same part of every charge of a run, by the chip's clock; learnt anew in the next run. */
    CLOCK,
    /** The same current all the time, in every run until the instruments change: it adds up with time. */
    OFFSET,
    /** The same current all the time of a run, another one in the next. */
    WANDERING,
    /** Of the voltage inputs: the same in every run until they change. */
    TAPS,
    /** Of this result alone. */
    OWN;

    /** Whether it errs in one way in all charges of one run, each with its own size and sign. */
    public boolean shared() {
        return switch (this) {
            case GAIN, WARMTH, CLOCK, OFFSET, WANDERING -> true;
            case TAPS, OWN -> false;
        };
    }
}
