package rigwarden.kernel;

import com.pi4j.context.Context;
import com.pi4j.event.ShutdownListener;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import rigwarden.emulated.EmulatedBoard;
import rigwarden.emulated.I2cTarget;

/** The emulated provider. Each opening is a board of its own, with the chips and the lines of the one before. */
final class EmulatedHeader implements Header {
    private static final int LINES = 8;
    private static final int PLACEHOLDER = 0x77;
    private static final long PULSE_NANOS = 100_000_000L;

    private final Map<Integer, I2cTarget> chips = new HashMap<>();
    private final Set<Integer> held = new TreeSet<>();
    private final boolean[] claimed = new boolean[LINES];
    private final boolean[] high = new boolean[LINES];
    private EmulatedBoard board = new EmulatedBoard();
    private long pulseEnd = System.nanoTime();

    @Override
    public Context open() {
        board = new EmulatedBoard();
        board.put(BUS, PLACEHOLDER, new Memory());
        chips.forEach((address, chip) -> board.put(BUS, address, chip));
        held.forEach(address -> board.kernelHolds(BUS, address, true));
        Arrays.fill(claimed, false);
        for (int line = 0; line < LINES; line++) {
            int place = line;
            board.output(line, level -> {
                claimed[place] = true;
                high[place] = level;
            });
        }
        board.input(ContractRig.LOOP, () -> System.nanoTime() < pulseEnd);
        Context context = board.context();
        context.addListener((ShutdownListener) _ -> Arrays.fill(claimed, false));
        return context;
    }

    @Override
    public boolean claimed(int line) {
        return claimed[line];
    }

    @Override
    public boolean high(int line) {
        return high[line];
    }

    @Override
    public void pulse() {
        pulseEnd = System.nanoTime() + PULSE_NANOS;
    }

    @Override
    public void put(int address, I2cTarget chip) {
        chips.put(address, chip);
    }

    @Override
    public void held(int address, boolean holds) {
        if (holds) {
            held.add(address);
        } else {
            held.remove(address);
        }
    }

    @Override
    public long combined() {
        return board.traffic().registerReads;
    }
}
