package rigwarden.logbook;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * A run whose process died, as found when the logbook was opened.
 *
 * @param number of the run
 * @param lastScan last scan on the disk, if there is one
 * @param orders in force then
 * @param step that had begun and not ended
 * @param fault what is wrong with the file; empty when it is whole
 * @param words all that for a person
 */
public record Interrupted(
        int number,
        OptionalLong lastScan,
        StoredOrders orders,
        OptionalInt step,
        Optional<String> fault,
        String words) {}
