package rigwarden.emulated;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import java.util.HashMap;
import java.util.Map;
import java.util.function.BooleanSupplier;

/** A board whose wires end in emulators. The context is built explicitly: nothing is found by looking round. */
public final class EmulatedBoard {
    /** What a GPIO output drives; told the level at the claim and at every write. */
    @FunctionalInterface
    public interface LineSink {
        void level(boolean high);
    }

    final Map<Integer, I2cTarget> chips = new HashMap<>();
    final Map<Integer, LineSink> outputs = new HashMap<>();
    final Map<Integer, BooleanSupplier> inputs = new HashMap<>();
    long registerReads;
    long registerWrites;
    long rawTransfers;
    long lineReads;
    long lineWrites;
    /** Address that the plug-in believes selected, by bus. */
    final Map<Integer, Integer> remembered = new HashMap<>();
    /** Chip that really is, by bus: after a failed select a raw transfer still goes there. */
    final Map<Integer, I2cTarget> selected = new HashMap<>();

    private final Context context;

    public EmulatedBoard() {
        context = Pi4J.newContextBuilder()
                .noAutoDetect()
                .add(new EmulatedI2cProvider(this), new EmulatedOutputProvider(this), new EmulatedInputProvider(this))
                .build();
    }

    /** Pi4J's context of this board. */
    public Context context() {
        return context;
    }

    /** Wires a chip to a bus. */
    public void put(int bus, int address, I2cTarget chip) {
        chips.put(key(bus, address), chip);
    }

    /** Wires an output line. */
    public void output(int line, LineSink sink) {
        outputs.put(line, sink);
    }

    /** Wires an input line. */
    public void input(int line, BooleanSupplier level) {
        inputs.put(line, level);
    }

    static int key(int bus, int address) {
        return bus << 8 | address;
    }

    public long registerReads() {
        return registerReads;
    }

    public long registerWrites() {
        return registerWrites;
    }

    public long lineReads() {
        return lineReads;
    }

    public long lineWrites() {
        return lineWrites;
    }

    /** All transactions: register and raw transfers, line reads and writes. */
    public long transactions() {
        return registerReads + registerWrites + rawTransfers + lineReads + lineWrites;
    }
}
