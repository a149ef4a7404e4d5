package rigwarden.pack;

/** Something that goes wrong in the world, with its size. It is inflicted at an instant and stays. */
public sealed interface Fault {
    /** A contact stays closed from now, or from its next closing. */
    record Weld(Line contact) implements Fault {}

    /** A contact never closes again. */
    record StuckOpen(Line contact) implements Fault {}

    /** The heartbeat line stays at a level, whatever is ordered. */
    record StuckHeartbeat(boolean level) implements Fault {}

    /** A body is heated from outside at a rate. */
    record HeatRate(int cell, double kelvinPerMinute) implements Fault {}

    /** A joint gets a resistance more. */
    record LooseJoint(int cell, boolean positive, double addedOhms) implements Fault {}

    /** A tap's wire is cut. */
    record BrokenTap(int cell) implements Fault {}

    /** A bead falls off and hangs in the room. */
    record DetachedBead(int bead) implements Fault {}

    /** A probe's wire is open. */
    record OpenProbe(int bead) implements Fault {}

    /** The source keeps its output whatever it is told, and tells nothing. */
    record SilentSource() implements Fault {}

    /** The source's regulator runs away: this many volts above its set point, twice its current. */
    record SourceRunaway(double volts) implements Fault {}

    /** The sink keeps its current whatever it is told, and tells nothing. */
    record SilentSink() implements Fault {}

    /** The room changes at once. */
    record RoomStep(double kelvin) implements Fault {}

    /** A contact of the loop opens. */
    record LoopOpens() implements Fault {}

    /** A cell leaks. */
    record Leak(int cell, double amps) implements Fault {}

    /** The heartbeat stage holds this long. */
    record SlowHeartbeat(double seconds) implements Fault {}
}
