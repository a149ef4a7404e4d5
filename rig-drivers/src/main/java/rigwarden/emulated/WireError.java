package rigwarden.emulated;

/**
 * The ways in which a message can go wrong, whatever carries it: the list of communication errors of IEC 61784-3, from memory of the
 * standard, with what it means here for a transfer on a bus or a line on a port. Nothing in it comes from this project's rules.
 */
public enum WireError {
    /** Some of its bits are others. */
    CORRUPTION,
    /** An old message comes once more, in place of the new one or after it. */
    REPETITION,
    /** Two messages change places. */
    WRONG_SEQUENCE,
    /** It does not arrive, or nobody answers. */
    LOSS,
    /** It arrives late. */
    DELAY,
    /** One arrives that nobody sent. */
    INSERTION,
    /** One from another sender is taken for it. */
    MASQUERADE,
    /** It goes to another than it was meant for. */
    ADDRESSING
}
