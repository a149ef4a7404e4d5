package rigwarden.kernel;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import rigwarden.emulated.I2cTarget;

/** What hangs on one bus that is served to the kernel; chips come and go while it is served. */
final class I2cWires {
    private final Map<Integer, I2cTarget> chips = new ConcurrentHashMap<>();
    private final Set<Integer> held = ConcurrentHashMap.newKeySet();
    private final AtomicLong combined = new AtomicLong();

    Optional<I2cTarget> chip(int address) {
        return Optional.ofNullable(chips.get(address));
    }

    void put(int address, I2cTarget chip) {
        chips.put(address, chip);
    }

    boolean held(int address) {
        return held.contains(address);
    }

    void held(int address, boolean holds) {
        if (holds) {
            held.add(address);
        } else {
            held.remove(address);
        }
    }

    void countCombined() {
        combined.incrementAndGet();
    }

    long combined() {
        return combined.get();
    }
}
