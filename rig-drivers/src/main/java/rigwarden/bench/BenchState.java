package rigwarden.bench;

import java.util.List;
import java.util.Set;
import rigwarden.chip.ina228.Ina228State;
import rigwarden.panel.Output;
import rigwarden.warden.Reading;

/**
 * All that the bench remembers between scans, so that a rig can be copied while it runs. Agents have a state of
 * their own.
 *
 * @param number of the latest scan
 * @param shunt what the driver of the shunt's chip knows
 * @param readings of the latest scan
 * @param high output lines that were last written high
 */
public record BenchState(long number, Ina228State shunt, List<Reading> readings, Set<Output> high) {
    public BenchState {
        readings = List.copyOf(readings);
        high = Set.copyOf(high);
    }
}
