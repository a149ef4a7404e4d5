package rigwarden.warden;

/** Why a channel has no valid reading. */
public enum Failure {
    /** Never read yet. */
    NOT_READ,
    /** The chip or port did not answer, or answered short. */
    NO_ANSWER,
    /** No new conversion was there when one had to be. */
    NOT_READY,
    /** A configuration register does not read back as written: the chip lost its supply for a moment. */
    CONFIGURATION_LOST,
    /** An open probe. */
    OPEN,
    /** A shorted probe. */
    SHORTED,
    /** The answer makes no sense. */
    NONSENSE
}
