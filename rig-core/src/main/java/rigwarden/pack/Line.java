package rigwarden.pack;

/**
 * An order line from the computer to the rig.
 *
 * @param kind what hangs on it
 * @param index number of the source or sink whose relay it is, from 0; 0 for every other kind
 */
public record Line(Kind kind, int index) {
    /** What can hang on a line. */
    public enum Kind {
        /** Coil of the main contactor K1. */
        CONTACTOR,
        /** Coil of the pre-charge relay Kp, whose resistor lies parallel to K1. */
        PRECHARGE,
        /** Coil of a source's relay: in its d.c. lead, or in the mains of a charger. */
        SOURCE_RELAY,
        /** Coil of a sink's relay: in its d.c. lead, or at the remote input of an inverter. */
        SINK_RELAY,
        /** Input of the heartbeat stage; its edges count, not its level. */
        HEARTBEAT,
        /** Input of the sounder. */
        SOUNDER
    }

    /** Coil of the main contactor K1. */
    public static final Line CONTACTOR = new Line(Kind.CONTACTOR, 0);
    /** Coil of the pre-charge relay Kp. */
    public static final Line PRECHARGE = new Line(Kind.PRECHARGE, 0);
    /** Coil of the first source's relay K2. */
    public static final Line SOURCE_RELAY = source(0);
    /** Coil of the first sink's relay K3. */
    public static final Line SINK_RELAY = sink(0);
    /** Input of the heartbeat stage. */
    public static final Line HEARTBEAT = new Line(Kind.HEARTBEAT, 0);
    /** Input of the sounder. */
    public static final Line SOUNDER = new Line(Kind.SOUNDER, 0);

    public Line {
        boolean many = kind == Kind.SOURCE_RELAY || kind == Kind.SINK_RELAY;
        if (index < 0 || index > 0 && !many) {
            throw new IllegalArgumentException("no line " + kind + " " + index);
        }
    }

    /** Coil of a source's relay, by its number from 0. */
    public static Line source(int index) {
        return new Line(Kind.SOURCE_RELAY, index);
    }

    /** Coil of a sink's relay, by its number from 0. */
    public static Line sink(int index) {
        return new Line(Kind.SINK_RELAY, index);
    }

    /** Whether a coil and its contact hang on this line. */
    public boolean hasContact() {
        return switch (kind) {
            case CONTACTOR, PRECHARGE, SOURCE_RELAY, SINK_RELAY -> true;
            case HEARTBEAT, SOUNDER -> false;
        };
    }
}
