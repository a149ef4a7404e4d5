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
 * A single-board computer's header without the computer: a Pi4J 3.0.3 context whose I2C buses lead to emulated chips
 * and whose lines lead to {@link LineSink} and {@link BooleanSupplier}. It fails as the official linuxfs and gpiod
 * plugins of that version fail (read off their class files), so that a driver which copes here copes there.
 *
 * <p>One thread owns a board and all that hangs on it; nothing here locks.
 */
public final class EmulatedBoard implements AutoCloseable {
    private static final int LAST_ADDRESS = 0x77;
    private static final int FIRST_ADDRESS = 0x08;

    private final Traffic traffic = new Traffic();
    private final Map<Integer, EmulatedI2cBus> buses = new HashMap<>();
    private final Map<Integer, List<LineSink>> sinks = new HashMap<>();
    private final Map<Integer, BooleanSupplier> levels = new HashMap<>();
    private final Context context;

    /** Builds the context explicitly: nothing is detected, so that no other provider can slip in. */
    public EmulatedBoard() {
        context = Pi4J.newContextBuilder()
                .noAutoDetect()
                .noAutoInject()
                .disableShutdownHook()
                .add(new EmulatedI2cProvider(this), new EmulatedOutputProvider(this), new EmulatedInputProvider(this))
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
        return this;
    }

    /** Lets the same chip, with a fault, answer at its address. */
    void replace(int bus, int address, I2cTarget chip) {
        existingBus(bus).replace(address, chip);
    }

    /** Lets the wires of this board meddle as those of another board do. */
    void meddleLike(EmulatedBoard other, VirtualClock clock) {
        buses.forEach((number, bus) -> bus.meddleLike(other.existingBus(number), clock));
    }

    /** Numbers of all buses. */
    List<Integer> busNumbers() {
        return buses.keySet().stream().sorted().toList();
    }

    /** Hangs something on an output; several may share a line. A line with nothing on it can be driven too. */
    public EmulatedBoard output(int bcm, LineSink sink) {
        sinks.computeIfAbsent(bcm, line -> new ArrayList<>()).add(sink);
        return this;
    }

    /** Wires an input. An input that is not wired stands at its pull, low without one. */
    public EmulatedBoard input(int bcm, BooleanSupplier high) {
        levels.put(bcm, high);
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

    private static void requireAddress(int address) {
        if (address < FIRST_ADDRESS || address > LAST_ADDRESS) {
            throw new IllegalArgumentException("I2C address " + address + " is outside 8 to 119");
        }
    }
}
