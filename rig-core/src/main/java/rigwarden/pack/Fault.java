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
     * A level alone holds the heartbeat stage alive once it is: the part that lets only changes through is short.
     *
     * @param level true for high
     */
    record HeartbeatHeldBy(boolean level) implements Fault {}

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
     * A sense wire is cut; what measures it pulls its end to its own ground.
     *
     * @param tap 0 at B−, k on the positive stud of the k-th cell
     */
    record BrokenTap(int tap) implements Fault {}

    /**
     * A sense wire carries a false voltage: a creeping current over a dirty board, a corroded crimp.
     *
     * @param tap 0 at B−, k on the positive stud of the k-th cell
     * @param volts added to its potential
     */
    record TapOffset(int tap, double volts) implements Fault {}

    /**
     * A probe fell off and hangs in the air.
     *
     * @param bead its place in the list of beads
     */
    record DetachedBead(int bead) implements Fault {}

    /**
     * A person lays a probe on another place. Nothing is wrong with that, and something may be found to be.
     *
     * @param bead its place in the list of beads
     * @param place where it lies from now on
     */
    record LaidBead(int bead, Node place) implements Fault {}

    /**
     * A source hears no more orders and keeps its output.
     *
     * @param source number from 0, one that takes orders
     */
    record SourceDeaf(int source) implements Fault {}

    /**
     * A source regulates too high, and at twice the current that it was set to.
     *
     * @param source number from 0
     * @param volts above its setting
     */
    record SourceRunaway(int source, double volts) implements Fault {}

    /**
     * A source's ceiling is too high; its current stays.
     *
     * @param source number from 0
     * @param volts above what it should regulate to
     */
    record ChargerHigh(int source, double volts) implements Fault {}

    /**
     * A balancer works on every cell above a voltage, whatever was stated.
     *
     * @param amps past the shunt, not negative
     * @param aboveVolts 0 for always
     */
    record BalancerOn(double amps, double aboveVolts) implements Fault {
        public BalancerOn {
            requireSize(amps);
        }
    }

    /**
     * The battery's protection stands at other limits; its releases moved with them.
     *
     * @param highVolts of a cell
     * @param lowVolts of a cell
     */
    record ProtectionSet(double highVolts, double lowVolts) implements Fault {}

    /**
     * A sink hears no more orders and keeps its current.
     *
     * @param sink number from 0, one that takes orders
     */
    record SinkDeaf(int sink) implements Fault {}

    /**
     * A sink takes more than it should: current of an electronic one, power of an inverter.
     *
     * @param sink number from 0
     * @param times of what it should take, not negative
     */
    record SinkRunaway(int sink, double times) implements Fault {
        public SinkRunaway {
            requireSize(times);
        }
    }

    /**
     * Something conducts across the bus: a capacitor that fails, a screwdriver.
     *
     * @param ohms above 0
     */
    record BusShort(double ohms) implements Fault {
        public BusShort {
            if (!(ohms > 0)) {
                throw new IllegalArgumentException("a short of " + ohms + " ohm");
            }
        }
    }

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
