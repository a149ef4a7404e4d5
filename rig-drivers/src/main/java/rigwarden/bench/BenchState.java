package rigwarden.bench;

import java.util.List;
import rigwarden.chip.ina228.Ina228State;
import rigwarden.warden.Reading;

/**
 * All that the bench remembers between scans, so that a rig can be copied while it runs. Agents have a state of
 * their own.
 *
 * @param number of the latest scan
 * @param shunt what the driver of the shunt's chip knows
 * @param readings of the latest scan
 * @param high output lines that were last written high, as bits
 */
public record BenchState(long number, Ina228State shunt, List<Reading> readings, long high) {
    public BenchState {
        readings = List.copyOf(readings);
    }
}
