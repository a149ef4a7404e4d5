package rigwarden.emulated;

import rigwarden.pack.Fault;
import rigwarden.rig.Spot;

/** Something that breaks in an emulated rig: in its world, or between world and wire. */
public sealed interface BoardFault {
    /** In the world. */
    record InWorld(Fault fault) implements BoardFault {}

    /** A probe's wire opens; {@code probe} is its place in the rig file, from 0. */
    record OpenProbe(int probe) implements BoardFault {}

    /** A person lays the loose probe on a spot, and says so: nothing breaks. The rig has one. */
    record LooseLaid(Spot spot) implements BoardFault {}

    /** The loose probe drops from where it lies, and nobody says so. */
    record LooseDrops() implements BoardFault {}

    /** A programmable device neither hears nor speaks, and keeps its output; its place in the rig's list. */
    record SilentDevice(int device) implements BoardFault {}

    /** From now on a share of all transfers on all buses is upset, 0…1; drawn from a seed. */
    record WiresUpset(double share, long seed) implements BoardFault {}

    /** The card that the logbook writes to stalls for so long, s: what was measured waits. */
    record CardStalls(double seconds) implements BoardFault {}

    /** Something else fills the card; so many bytes are left. */
    record CardFills(long bytesLeft) implements BoardFault {}

    /** The computer does nothing for so long, s: no scan, no order, no beat. */
    record ComputerStalls(double seconds) implements BoardFault {}

    /** The monotonic clock shows the same at the beginning of so many scans as at the one before. */
    record ClockStands(int scans) implements BoardFault {}

    /** From now on every switching of the contactor lifts every ADC input by this for two milliseconds, V at the pin. */
    record ContactorSpikes(double volts) implements BoardFault {}

    /** A share of the messages on one I2C bus goes wrong in one way, 0…1; a late one comes so much later, s. */
    record BusErrs(int bus, WireError error, double share, double delaySeconds, long seed) implements BoardFault {}

    /** The same on one SPI bus. */
    record SpiBusErrs(int bus, WireError error, double share, double delaySeconds, long seed) implements BoardFault {}

    /** The same on the port of a programmable device, by its place in the rig's list. */
    record PortErrs(int device, WireError error, double share, double delaySeconds, long seed) implements BoardFault {}

    /** A share of all bytes on every bus and every port is any byte, both ways, 0…1. */
    record BytesMangled(double share, long seed) implements BoardFault {}

    /** A chip fails in itself. */
    record ChipFails(ChipPlace at, ChipFault how) implements BoardFault {}

    /** A serial link fails; the device's place in the rig's list. */
    record LinkFails(int device, LineFault how) implements BoardFault {}

    /** The volts that a programmable device shows, and protects itself by, become this multiple of the truth; its place in the rig's list. */
    record MeterReadsOff(int device, double factor) implements BoardFault {}

    /** An input of the board reads one level for ever; a line of the header or of an expander. */
    record InputStuck(int bcm, boolean high) implements BoardFault {}

    /** An output of the board stays at one level for ever, whatever is written; a line of the header or of an expander. */
    record OutputStuck(int bcm, boolean high) implements BoardFault {}

    /** The shunt's resistance becomes this multiple of what it was; 0 for shorted sense leads. */
    record ShuntDrifts(double factor) implements BoardFault {}

    /** What stands before a voltage input becomes this multiple; its place in the rig's list, 0 for shorted. */
    record InputDrifts(int input, double factor) implements BoardFault {}

    /** A probe shows so many kelvin too much; its place in the rig file. */
    record ProbeDrifts(int probe, double kelvin) implements BoardFault {}

    /** A probe's wires touch. */
    record ProbeShorted(int probe) implements BoardFault {}

    /** Two probes' wires are exchanged; their places in the rig file. */
    record ProbesSwapped(int one, int other) implements BoardFault {}

    /** A probe's two wires are exchanged, so that it falls where it is warmed. */
    record ProbeReversed(int probe) implements BoardFault {}

    /** A tap's lead sits on another stud; the tap by its cell, the stud from 0 at B−. */
    record TapOnStud(int tap, int stud) implements BoardFault {}

    /** Two taps' leads are exchanged, by their cells. */
    record TapsSwapped(int one, int other) implements BoardFault {}

    /** A tap's lead sits on the bar above its stud, after this share of what joint and bar drop, 0…1. */
    record TapOnBar(int tap, double share) implements BoardFault {}

    /** The shunt's reading is off by this, V at its chip. */
    record ShuntOffset(double volts) implements BoardFault {}

    /** A second ground, made by the links that a person plugs in, lifts the shunt's reading by this, V at its chip. */
    record LinksTied(double volts) implements BoardFault {}

    /** A contact of the loop is bridged: opening it opens nothing; its place in the rig file. */
    record ContactBridged(int contact) implements BoardFault {}

    /** The loop does not latch: it closes with its contact. */
    record LoopForgets() implements BoardFault {}
}
