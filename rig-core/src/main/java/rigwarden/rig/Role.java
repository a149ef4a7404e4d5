package rigwarden.rig;

import rigwarden.quantity.Quantity;

/** What a channel is for. Rules and steps find their channels by role, never by name. */
public enum Role {
    CURRENT(Quantity.CURRENT),
    ACCUMULATED(Quantity.CHARGE),
    CLOCK_RATIO(Quantity.RATIO),
    PACK_VOLTS(Quantity.VOLTAGE),
    TAP_VOLTS(Quantity.VOLTAGE),
    CELL_VOLTS(Quantity.VOLTAGE),
    BUS_VOLTS(Quantity.VOLTAGE),
    BODY(Quantity.TEMPERATURE),
    STUD(Quantity.TEMPERATURE),
    BAR(Quantity.TEMPERATURE),
    SHUNT_BODY(Quantity.TEMPERATURE),
    CONTACTOR_BODY(Quantity.TEMPERATURE),
    ROOM(Quantity.TEMPERATURE),
    LOOSE(Quantity.TEMPERATURE),
    LOOP(Quantity.SWITCH),
    COIL_FEED(Quantity.SWITCH),
    FEEDBACK(Quantity.SWITCH),
    ARM(Quantity.SWITCH),
    SOURCE_VOLTS(Quantity.VOLTAGE),
    SOURCE_AMPS(Quantity.CURRENT),
    SOURCE_ON(Quantity.SWITCH),
    SINK_VOLTS(Quantity.VOLTAGE),
    SINK_AMPS(Quantity.CURRENT),
    SINK_ON(Quantity.SWITCH),
    RECORDER_LAG(Quantity.TIME),
    FREE_SPACE(Quantity.SIZE),
    LATENESS(Quantity.TIME);

    private final Quantity quantity;

    Role(Quantity quantity) {
        this.quantity = quantity;
    }

    public Quantity quantity() {
        return quantity;
    }

    /** The probe that a person carries from spot to spot: nothing is judged by it. */
    public boolean carried() {
        return this == LOOSE;
    }

    /** Temperatures of joints: a stud, or the bar between two. */
    public boolean joint() {
        return this == STUD || this == BAR;
    }

    /** Temperatures of places that carry the current and warm by it: studs, bars, shunt, contactor. */
    public boolean warmsByCurrent() {
        return joint() || this == SHUNT_BODY || this == CONTACTOR_BODY;
    }

    /** Answers of a serial instrument, published by its agent at the instrument's own poll. */
    public boolean ofInstrument() {
        return switch (this) {
            case SOURCE_VOLTS, SOURCE_AMPS, SOURCE_ON, SINK_VOLTS, SINK_AMPS, SINK_ON -> true;
            case CURRENT, ACCUMULATED, CLOCK_RATIO, PACK_VOLTS, TAP_VOLTS, CELL_VOLTS, BUS_VOLTS, BODY, STUD, BAR,
                    SHUNT_BODY,
                    CONTACTOR_BODY, ROOM, LOOSE, LOOP, COIL_FEED, FEEDBACK, ARM, RECORDER_LAG, FREE_SPACE, LATENESS -> false;
        };
    }
}
