package rigwarden.pack;

/** Something that breaks, with its size. It starts at the instant at which it is inflicted, and never heals. */
public sealed interface Fault {
    /**
     * A contact is closed from now on, whatever its coil does. The mirror contact of K1 tells the truth about it.
     * Inflicted while the contact is open it stands for a weld found at the start of the night.
     *
     * @param contact a line that has a contact
     */
    record Weld(Line contact) implements Fault {
        public Weld {
            requireContact(contact);
        }
    }

    /**
     * A contact is open from now on.
     *
     * @param contact a line that has a contact
     */
    record StuckOpen(Line contact) implements Fault {
        public StuckOpen {
            requireContact(contact);
        }
    }

    /**
     * The heartbeat stage sees this level for ever.
     *
     * @param level true for high
     */
    record StuckHeartbeat(boolean level) implements Fault {}

    /**
     * The heartbeat stage holds the coil supply longer or shorter than it should.
     *
     * @param holdSeconds from the last edge to the drop-out, not negative
     */
    record SlowHeartbeat(double holdSeconds) implements Fault {
        public SlowHeartbeat {
            requireSize(holdSeconds);
        }
    }

    /**
     * Heat from outside, or from a short inside, in a cell's body.
     *
     * @param cell number from 0
     * @param watts negative cools
     */
    record HeatBody(int cell, double watts) implements Fault {}

    /**
     * Heat that would drive the body at this rate if it lost none.
     *
     * @param cell number from 0
     * @param kelvinPerMinute added to what else warms it
     */
    record HeatRate(int cell, double kelvinPerMinute) implements Fault {}

    /**
     * A stud's joint has more resistance.
     *
     * @param cell number from 0
     * @param positive which stud
     * @param addedOhms not negative
     */
    record LooseJoint(int cell, boolean positive, double addedOhms) implements Fault {
        public LooseJoint {
            requireSize(addedOhms);
        }
    }

    /**
     * The sense wire of a cell is cut; a megaohm at the input pulls the tap to 0 V.
     *
     * @param cell number from 0
     */
    record BrokenTap(int cell) implements Fault {}

    /**
     * A probe fell off and hangs in the air.
     *
     * @param bead its place in the list of beads
     */
    record DetachedBead(int bead) implements Fault {}

    /** The source hears no more orders and keeps its output. */
    record SourceDeaf() implements Fault {}

    /**
     * The source regulates too high, and at twice the current that it was set to.
     *
     * @param volts above its setting
     */
    record SourceRunaway(double volts) implements Fault {}

    /** The sink hears no more orders and keeps its current. */
    record SinkDeaf() implements Fault {}

    /**
     * The room becomes warmer or colder at once.
     *
     * @param kelvin step
     */
    record RoomStep(double kelvin) implements Fault {}

    /** A contact of the loop opens; the loop latches. */
    record LoopOpens() implements Fault {}

    /**
     * A cell discharges itself inside.
     *
     * @param cell number from 0
     * @param amps added to its own self-discharge, not negative
     */
    record Leak(int cell, double amps) implements Fault {
        public Leak {
            requireSize(amps);
        }
    }

    private static void requireContact(Line line) {
        if (!line.hasContact()) {
            throw new IllegalArgumentException("no contact hangs on " + line);
        }
    }

    private static void requireSize(double size) {
        if (!(size >= 0)) {
            throw new IllegalArgumentException("a size below 0: " + size);
        }
    }
}
