package rigwarden.warden;

/** Stages of a path: from pre-charge to current in this order, one before that with the contactor open, two after it that prove a stop. */
public enum Closing {
    /** A switched source works onto the open bus alone: shows its no-load voltage before any cell meets it. */
    NO_LOAD,
    /** The bus is filled through the pre-charge resistor. */
    PRECHARGE,
    /** The contactor is closed; source and sink are off. */
    CONTACT,
    /** The contactor is ordered closed and no beat is given: proves that the heartbeat stage lets go. */
    SILENCE,
    /** Source or sink works at its set point. */
    CURRENT,
    /** Of all that holds this way only the device's own relay is opened, for at most three seconds: proves that it stops the current alone. */
    RELAY_ALONE,
    /** Of all that holds this way only the contactor is opened, for at most three seconds: proves the same of it. */
    CONTACTOR_ALONE
}
