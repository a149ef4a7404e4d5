package rigwarden.bench;

import java.util.List;
import java.util.Optional;
import rigwarden.chip.ina228.Ina228State;
import rigwarden.chip.max31856.Max31856State;
import rigwarden.panel.OutputsState;
import rigwarden.warden.Reading;

/**
 * All that the bench remembers between scans, so that a rig can be copied while it runs. Agents have a state of
 * their own.
 *
 * @param number of the latest scan
 * @param shunt what the driver of the shunt's chip knows; nothing where it needs to know nothing
 * @param probes what the drivers of the MAX31856 know, in the rig's order
 * @param readings of the latest scan
 * @param outputs what is known of the output lines
 */
public record BenchState(
        long number, Optional<Ina228State> shunt, List<Max31856State> probes, List<Reading> readings, OutputsState outputs) {
    public BenchState {
        probes = List.copyOf(probes);
        readings = List.copyOf(readings);
    }
}
