package rigwarden.pack;

/** An order line from the computer to the rig. */
public enum Line {
    /** Coil of the main contactor K1. */
    CONTACTOR,
    /** Coil of the pre-charge relay Kp, whose resistor lies parallel to K1. */
    PRECHARGE,
    /** Coil of the source's relay K2. */
    SOURCE_RELAY,
    /** Coil of the sink's relay K3. */
    SINK_RELAY,
    /** Input of the heartbeat stage; its edges count, not its level. */
    HEARTBEAT,
    /** Input of the sounder. */
    SOUNDER;

    /** Whether a coil and its contact hang on this line. */
    public boolean hasContact() {
        return switch (this) {
            case CONTACTOR, PRECHARGE, SOURCE_RELAY, SINK_RELAY -> true;
            case HEARTBEAT, SOUNDER -> false;
        };
    }
}
