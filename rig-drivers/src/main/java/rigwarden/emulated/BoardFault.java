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
}
