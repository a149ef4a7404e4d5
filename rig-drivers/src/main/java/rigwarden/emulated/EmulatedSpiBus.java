package rigwarden.emulated;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * One SPI controller with its device nodes, as the kernel presents it. A node keeps the mode that was last written to it
 * for as long as the board is up, whoever opens it. There are nodes for selects 0 and 1, for each further select
 * that has a chip, and where one was asked for: a node without a chip serves chips that are selected by a line.
 */
final class EmulatedSpiBus {
    private static final int SELECTS = 11;
    private static final Set<Integer> ALWAYS_THERE = Set.of(0, 1);
    /** Default of the kernel module spidev, bytes. */
    private static final int LONGEST = 4096;

    private final List<SpiSeat> seats = new ArrayList<>();
    private final Set<Integer> nodes = new HashSet<>(ALWAYS_THERE);
    private final int[] modes = new int[SELECTS];
    private final StraightSpiWire straight = new StraightSpiWire(seats);
    private SpiWire wire = straight;
    private Optional<WireUpsets> upsets = Optional.empty();
    private boolean refusing;

    void put(SpiSeat seat) {
        if (seat.select != SpiSeat.BY_LINE && selects().contains(seat.select)) {
            throw new IllegalStateException("the SPI bus has a chip at select " + seat.select + " already");
        }
        seats.add(seat);
    }

    /** Lets another chip sit where one sat: the same one with a fault. */
    void replace(SpiTarget chip, SpiTarget by) {
        SpiSeat found = seats.stream().filter(seat -> seat.chip == chip).findFirst()
                .orElseThrow(() -> new IllegalStateException("no such chip on the SPI bus"));
        found.replace(by);
    }

    /** Selects of the controller at which chips sit. */
    List<Integer> selects() {
        return seats.stream().map(seat -> seat.select).filter(select -> select != SpiSeat.BY_LINE).sorted().toList();
    }

    boolean hasNode(int select) {
        return nodes.contains(select) || selects().contains(select);
    }

    /** There is a node for a select, be there a chip at it or not. */
    void node(int select) {
        nodes.add(select);
    }

    void pull(boolean up) {
        straight.pull(up);
    }

    void refuse(boolean now) {
        refusing = now;
    }

    void upset(WireUpsets by) {
        upsets = Optional.of(by);
    }

    /** Lets something meddle with what this bus carries, over whatever meddles already. */
    void meddle(UnaryOperator<SpiWire> more) {
        wire = more.apply(wire);
    }

    /** Takes over what meddles with another bus and how its selects and nodes stand, in the state in which it is. */
    void meddleLike(EmulatedSpiBus other, VirtualClock clock) {
        straight.standLike(other.straight);
        System.arraycopy(other.modes, 0, modes, 0, SELECTS);
        wire = other.wire.onto(straight, clock);
    }

    int mode(int select) {
        return modes[select];
    }

    void mode(int select, int mode) {
        modes[select] = mode;
    }

    /**
     * A message to one node.
     *
     * @param got as long as what is sent
     * @return whether the kernel answers with success; what arrived is worth nothing otherwise
     */
    boolean message(int select, byte[] sent, byte[] got, boolean kept) {
        if (refusing || sent.length > LONGEST) {
            return false;
        }
        WireUpsets.Upset upset = upsets.isPresent() ? upsets.get().next() : WireUpsets.Upset.NONE;
        return switch (upset) {
            case NONE -> carried(select, sent, got, kept);
            case NOT_ACKNOWLEDGED -> false;
            case BIT_TURNED -> turned(upsets.orElseThrow(), select, sent, got, kept);
        };
    }

    private boolean turned(WireUpsets by, int select, byte[] sent, byte[] got, boolean kept) {
        if (by.outwards()) {
            byte[] other = sent.clone();
            by.turn(other, 0, other.length);
            return carried(select, other, got, kept);
        }
        boolean done = carried(select, sent, got, kept);
        by.turn(got, 0, got.length);
        return done;
    }

    private boolean carried(int select, byte[] sent, byte[] got, boolean kept) {
        return wire.carried(new SpiMessage(select, modes[select], kept, sent), got) >= 0;
    }
}
