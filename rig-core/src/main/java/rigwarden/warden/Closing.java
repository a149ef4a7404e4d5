package rigwarden.warden;

/** Stages from open to current, in this order. */
public enum Closing {
    /** The bus is filled through the pre-charge resistor. */
    PRECHARGE,
    /** The contactor is closed; source and sink are off. */
    CONTACT,
    /** The contactor is ordered closed and no beat is given: proves that the heartbeat stage lets go. */
    SILENCE,
    /** Source or sink works at its set point. */
    CURRENT
}
