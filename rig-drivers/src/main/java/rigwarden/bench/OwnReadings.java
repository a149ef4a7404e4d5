package rigwarden.bench;

import java.util.function.DoubleSupplier;
import java.util.function.LongSupplier;

/**
 * What the program says of itself, read in each scan like any sensor.
 *
 * @param recorderLagSeconds age of the oldest record that is not stored yet
 * @param freeBytes space left where runs are stored
 * @param latenessSeconds how late this scan began
 */
public record OwnReadings(
        DoubleSupplier recorderLagSeconds, LongSupplier freeBytes, DoubleSupplier latenessSeconds) {}
