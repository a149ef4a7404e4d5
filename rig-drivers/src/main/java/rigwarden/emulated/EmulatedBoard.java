package rigwarden.emulated;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * A single-board computer's header without the computer: a Pi4J 3.0.3 context whose I2C and SPI buses lead to emulated
 * chips and whose lines lead to {@link LineSink} and {@link BooleanSupplier}. It fails as the official linuxfs and gpiod
 * plugins of that version fail (read off their class files), so that a driver which copes here copes there.
 *
 * <p>One thread owns a board and all that hangs on it; nothing here locks.
 */
public final class EmulatedBoard implements AutoCloseable {
    private static final int LAST_ADDRESS = 0x77;
    private static final int FIRST_ADDRESS = 0x08;

    private final Traffic traffic = new Traffic();
    private final Map<Integer, EmulatedI2cBus> buses = new HashMap<>();
    private final Map<Integer, EmulatedSpiBus> spiBuses = new HashMap<>();
    private final Map<Integer, List<LineSink>> sinks = new HashMap<>();
    private final Map<Integer, BooleanSupplier> levels = new HashMap<>();
    private final Map<Integer, Boolean> stuck;
    private final Context context;

    /** A board of which no line is stuck. */
    public EmulatedBoard() {
        this(Map.of());
    }

    /**
     * Builds the context explicitly: nothing is detected, so that no other provider can slip in.
     *
     * @param stuck lines that stay at one level, whatever drives them; looked at whenever a line changes or is read
     */
    EmulatedBoard(Map<Integer, Boolean> stuck) {
        this.stuck = stuck;
        context = Pi4J.newContextBuilder()
                .noAutoDetect()
                .noAutoInject()
                .disableShutdownHook()
                .add(new EmulatedI2cProvider(this), new EmulatedSpiProvider(this), new EmulatedOutputProvider(this),
                        new EmulatedInputProvider(this))
                .build();
    }

    /** The context on which drivers create their devices by Pi4J's own config builders. */
    public Context context() {
        return context;
    }

    /** The counts, live. */
    public Traffic traffic() {
        return traffic;
    }

    /**
     * Wires a chip; a bus exists from its first chip on.
     *
     * @param address 7-bit address, 08h to 77h
     * @throws IllegalArgumentException for a reserved address
     * @throws IllegalStateException when another chip has that address
     */
    public EmulatedBoard put(int bus, int address, I2cTarget chip) {
        requireAddress(address);
        bus(bus).put(address, chip);
        return this;
    }

    /**
     * Wires a chip to one of an SPI controller's own selects; a bus exists from its first chip on. A chip's own pins go to inputs
     * by {@code input(bcm, chip::readyPinHigh)}.
     *
     * @param select number of the select, 0 to 10
     * @throws IllegalStateException when another chip has that select
     */
    public EmulatedBoard putSpi(int bus, int select, SpiTarget chip) {
        madeSpiBus(bus).put(SpiSeat.atSelect(select, chip));
        return this;
    }

    /**
     * Wires a chip to an SPI bus and its select to an output line of the board: it hears whatever passes on the bus while
     * that line is at its active level. Before the line is claimed it hears nothing.
     *
     * @param bcm the output line
     */
    public EmulatedBoard putSpiByLine(int bus, int bcm, boolean activeHigh, SpiTarget chip) {
        SpiSeat seat = SpiSeat.atLine(activeHigh, chip);
        madeSpiBus(bus).put(seat);
        return output(bcm, seat);
    }

    /** Gives a controller a device node for a select at which no chip sits. */
    public EmulatedBoard spiNode(int bus, int select) {
        madeSpiBus(bus).node(select);
        return this;
    }

    /** Lets a node have kept these mode bits from before, 0 to 3. */
    public EmulatedBoard spiMode(int bus, int select, int mode) {
        madeSpiBus(bus).mode(select, mode);
        return this;
    }

    /** Lets an SPI controller report for every message that it could not send it, or no longer. */
    public EmulatedBoard refusesSpi(int bus, boolean refuses) {
        madeSpiBus(bus).refuse(refuses);
        return this;
    }

    /** Pulls the line from the chips to the host up, or down as it is at first (the header's default, from memory). */
    public EmulatedBoard pullSpi(int bus, boolean up) {
        madeSpiBus(bus).pull(up);
        return this;
    }

    /**
     * Lets a kernel driver hold an address, or release it: selecting it then fails with "Device or resource busy".
     *
     * @throws IllegalArgumentException for a reserved address
     */
    public EmulatedBoard kernelHolds(int bus, int address, boolean holds) {
        requireAddress(address);
        bus(bus).hold(address, holds);
        return this;
    }

    /** Lets the wires of every bus pick up something now and then. */
    public EmulatedBoard upset(WireUpsets upsets) {
        buses.values().forEach(bus -> bus.upset(upsets));
        spiBuses.values().forEach(bus -> bus.upset(upsets));
        return this;
    }

    /** Lets the same chip, with a fault, answer at its address. */
    void replace(int bus, int address, I2cTarget chip) {
        existingBus(bus).replace(address, chip);
    }

    /** Lets the same chip, with a fault, sit where it sits on an SPI bus. */
    void replaceSpi(int bus, SpiTarget chip, SpiTarget by) {
        madeSpiBus(bus).replace(chip, by);
    }

    /** Lets the wires of this board meddle as those of another board do. */
    void meddleLike(EmulatedBoard other, VirtualClock clock) {
        buses.forEach((number, bus) -> bus.meddleLike(other.existingBus(number), clock));
        spiBuses.forEach((number, bus) -> bus.meddleLike(other.spiBus(number).orElseThrow(), clock));
    }

    /** Numbers of all buses. */
    List<Integer> busNumbers() {
        return buses.keySet().stream().sorted().toList();
    }

    /** Numbers of all SPI buses. */
    List<Integer> spiBusNumbers() {
        return spiBuses.keySet().stream().sorted().toList();
    }

    /** An SPI bus, if there is one of that number. */
    Optional<EmulatedSpiBus> spiBus(int bus) {
        return Optional.ofNullable(spiBuses.get(bus));
    }

    /** Hangs something on an output; several may share a line. A line with nothing on it can be driven too. */
    public EmulatedBoard output(int bcm, LineSink sink) {
        sinks.computeIfAbsent(bcm, line -> new ArrayList<>()).add(high -> {
            if (!stuck.containsKey(bcm)) {
                sink.level(high);
            }
        });
        return this;
    }

    /** Wires an input. An input that is not wired stands at its pull, low without one. */
    public EmulatedBoard input(int bcm, BooleanSupplier high) {
        levels.put(bcm, () -> stuck.containsKey(bcm) ? stuck.get(bcm) : high.getAsBoolean());
        return this;
    }

    /** Shuts the context down: each output goes to its shutdown level and, as on the real board, stays driven there. */
    @Override
    public void close() {
        context.shutdown();
    }

    EmulatedI2cBus existingBus(int bus) {
        EmulatedI2cBus found = buses.get(bus);
        if (found == null) {
            throw EmulatedI2cBus.absent(bus);
        }
        return found;
    }

    List<LineSink> sinks(int bcm) {
        return sinks.computeIfAbsent(bcm, line -> new ArrayList<>());
    }

    Optional<BooleanSupplier> level(int bcm) {
        return Optional.ofNullable(levels.get(bcm));
    }

    private EmulatedI2cBus bus(int bus) {
        return buses.computeIfAbsent(bus, number -> new EmulatedI2cBus(number, traffic));
    }

    private EmulatedSpiBus madeSpiBus(int bus) {
        return spiBuses.computeIfAbsent(bus, _ -> new EmulatedSpiBus());
    }

    private static void requireAddress(int address) {
        if (address < FIRST_ADDRESS || address > LAST_ADDRESS) {
            throw new IllegalArgumentException("I2C address " + address + " is outside 8 to 119");
        }
    }
}
