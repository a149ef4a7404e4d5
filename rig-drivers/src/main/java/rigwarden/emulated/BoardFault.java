package rigwarden.emulated;

import rigwarden.pack.Fault;

/** Something that breaks in an emulated rig: in its world, or between world and wire. */
public sealed interface BoardFault {
    /** In the world. */
    record InWorld(Fault fault) implements BoardFault {}

    /** A probe's wire opens; {@code probe} is its place in the rig file, from 0. */
    record OpenProbe(int probe) implements BoardFault {}

    /** A programmable device neither hears nor speaks, and keeps its output; its place in the rig's list. */
    record SilentDevice(int device) implements BoardFault {}

    /** From now on a share of all transfers on the I2C buses is upset, 0…1; drawn from a seed. */
    record WiresUpset(double share, long seed) implements BoardFault {}

    /** The card that the logbook writes to stalls for so long, s: what was measured waits. */
    record CardStalls(double seconds) implements BoardFault {}

    /** From now on every switching of the contactor lifts every ADC input by this for two milliseconds, V at the pin. */
    record ContactorSpikes(double volts) implements BoardFault {}
}
