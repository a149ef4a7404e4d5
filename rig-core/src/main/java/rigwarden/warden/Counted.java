package rigwarden.warden;

import java.util.Optional;
import rigwarden.rig.Channel;

/**
 * Charge as the warden itself counts it, from the current of every scan. Immutable.
 *
 * @param nanos last scan with a current; of no meaning before the first
 * @param amps current then, A
 * @param ampSeconds sum since the first scan, A·s, positive into the cells
 * @param through the same without its sign, A·s
 * @param mark where the sum was last laid beside the chip's own
 * @param filled sum when the highest cell was last full; empty before
 * @param filledAmps current then, A
 * @param emptied sum when the lowest cell was last empty; empty before
 * @param taken what lay between the two, A·s; empty where the discharge did not begin full
 */
record Counted(
        long nanos,
        double amps,
        double ampSeconds,
        double through,
        Optional<Mark> mark,
        Optional<Double> filled,
        double filledAmps,
        Optional<Double> emptied,
        Optional<Double> taken) {
    static final Counted NOTHING = new Counted(Long.MIN_VALUE, 0, 0, 0, Optional.empty(), Optional.empty(), 0,
            Optional.empty(), Optional.empty());
    /** A charge is as good as full from here on, and a discharge as good as empty below. */
    private static final double FULL_V = 3.55;
    private static final double EMPTY_V = 3.0;
    private static final long MARK_NANOS = 1_200_000_000_000L;

    /**
     * The two sums side by side.
     *
     * @param chip accumulator then, A·s by the chip's clock
     */
    record Mark(long nanos, double amps, double ampSeconds, double through, double chip) {}

    Counted then(Scan scan, Reading[] readings, Places places, InForce inForce) {
        if (!(readings[places.current.index()] instanceof Reading.Valid current)) {
            return this;
        }
        double now = current.value();
        double seconds = nanos == Long.MIN_VALUE ? 0 : (scan.nanos() - nanos) * 1e-9;
        double sum = ampSeconds + (amps + now) / 2 * seconds;
        double moved = through + (Math.abs(amps) + Math.abs(now)) / 2 * seconds;
        Optional<Mark> marked = marked(scan, readings, places, new Mark(scan.nanos(), now, sum, moved, 0));
        boolean flows = inForce.energised() && inForce.stage() == Closing.CURRENT;
        if (flows && inForce.way() == Way.CHARGE && highest(readings, places) >= FULL_V) {
            return new Counted(scan.nanos(), now, sum, moved, marked, Optional.of(sum), Math.abs(now), emptied, taken);
        }
        if (flows && inForce.way() == Way.DISCHARGE && lowest(readings, places) <= EMPTY_V) {
            double at = sum;
            return new Counted(scan.nanos(), now, sum, moved, marked, filled, filledAmps, Optional.of(sum),
                    filled.map(full -> full - at));
        }
        return new Counted(scan.nanos(), now, sum, moved, marked, filled, filledAmps, emptied, taken);
    }

    private Optional<Mark> marked(Scan scan, Reading[] readings, Places places, Mark here) {
        boolean due = mark.isEmpty() || scan.nanos() - mark.get().nanos() >= MARK_NANOS;
        return due && readings[places.accumulated.index()] instanceof Reading.Valid chip
                ? Optional.of(new Mark(here.nanos(), here.amps(), here.ampSeconds(), here.through(), chip.value()))
                : mark;
    }

    private static double highest(Reading[] readings, Places places) {
        double highest = -Double.MAX_VALUE;
        for (Channel cell : places.cells) {
            if (readings[cell.index()] instanceof Reading.Valid valid) {
                highest = Math.max(highest, valid.value());
            }
        }
        return highest;
    }

    private static double lowest(Reading[] readings, Places places) {
        double lowest = Double.MAX_VALUE;
        for (Channel cell : places.cells) {
            if (readings[cell.index()] instanceof Reading.Valid valid) {
                lowest = Math.min(lowest, valid.value());
            }
        }
        return lowest;
    }
}
