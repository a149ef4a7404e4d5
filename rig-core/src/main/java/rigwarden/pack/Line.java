package rigwarden.pack;

/** Order lines from the controller. */
public enum Line {
    CONTACTOR(0),
    PRECHARGE(1),
    SOURCE_RELAY(2),
    SINK_RELAY(3),
    HEARTBEAT(4),
    SOUNDER(5);

    final int index;

    Line(int index) {
        this.index = index;
    }

    /** Whether it drives a contact. */
    boolean hasContact() {
        return this != HEARTBEAT && this != SOUNDER;
    }
}
