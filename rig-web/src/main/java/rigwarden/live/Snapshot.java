package rigwarden.live;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rigwarden.warden.Scan;
import rigwarden.warden.Trip;
import rigwarden.warden.Warning;

/**
 * One immutable look at a run.
 *
 * @param scan the scan that it was made from
 * @param elapsedNanos since the first scan
 * @param trends change of each channel over the last minute, in its unit, by channel index
 * @param doing what the run does
 * @param waits whether a cell's temperature keeps the step from beginning
 * @param forecast what will end the running step
 * @param ahead the place that will be nearest to its limit when the running step ends
 * @param nearest the limit nearest to being met
 * @param left how the cells will be left
 * @param strip every step's place in the night
 * @param trip the first cause, when tripped
 * @param also what hangs on it
 * @param warnings the last few, newest last
 * @param over whether nothing more will come
 * @param unseen scans that this view had no time to look at; all are stored
 */
public record Snapshot(
        Scan scan,
        long elapsedNanos,
        List<OptionalDouble> trends,
        Doing doing,
        boolean waits,
        Optional<Forecast> forecast,
        Optional<Ahead> ahead,
        Optional<Nearest> nearest,
        Left left,
        List<Stretch> strip,
        Optional<Trip> trip,
        List<Trip> also,
        List<Warning> warnings,
        boolean over,
        long unseen) {

    /** Time at which the run began, on the clock of the scans. */
    public long originNanos() {
        return scan.nanos() - elapsedNanos;
    }
}
