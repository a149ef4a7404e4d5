package rigwarden.warden;

import java.util.Optional;
import rigwarden.rig.Channel;

/**
 * Charge as the warden itself counts it, from the current of every scan. Immutable.
 *
 * @param nanos last scan with a current; of no meaning before the first
 * @param amps current then, A: the middle one of three scans, since one may be false
 * @param last current of the last scan, A
 * @param before current of the scan before that, A
 * @param chip accumulator of the last scan, A·s; of no meaning before the first
 * @param ampSeconds sum since the first scan, A·s, positive into the cells
 * @param through the same without its sign, A·s
 * @param mark where the sum was last laid beside the chip's own
 * @param atEnd scans in a row with a cell as good as full, or as good as empty
 * @param filled sum when the highest cell was last full; empty before
 * @param filledAmps current then, A
 * @param emptied sum when the lowest cell was last empty; empty before
 * @param taken what lay between the two, A·s; empty where the discharge did not begin full
 */
record Counted(
        long nanos,
        double amps,
        double last,
        double before,
        double chip,
        double ampSeconds,
        double through,
        Optional<Mark> mark,
        int atEnd,
        Optional<Double> filled,
        double filledAmps,
        Optional<Double> emptied,
        Optional<Double> taken) {
    static final Counted NOTHING = from(Swing.NONE);
    /** A charge is as good as full from here on, and a discharge as good as empty below. */
    private static final double FULL_V = 3.55;
    private static final double EMPTY_V = 3.0;
    /** The accumulator may step by so much more than the current explains, A·s. */
    private static final double CHIP_AS = 0.5;
    private static final int CERTAIN = 3;
    private static final long MARK_NANOS = 1_200_000_000_000L;

    /**
     * The two sums side by side.
     *
     * @param chip accumulator then, A·s by the chip's clock
     */
    record Mark(long nanos, double amps, double ampSeconds, double through, double chip) {}

    /** Before the first scan of a run that goes on from there. */
    static Counted from(Swing swing) {
        return new Counted(Long.MIN_VALUE, 0, 0, 0, 0, swing.ampSeconds(), 0, Optional.empty(), 0, swing.filled(),
                swing.filledAmps(), swing.emptied(), swing.taken());
    }

    Swing swing() {
        return new Swing(ampSeconds, filled, filledAmps, emptied, taken);
    }

    Counted then(Scan scan, Reading[] readings, Places places, InForce inForce) {
        if (!(readings[places.current.index()] instanceof Reading.Valid current)) {
            return this;
        }
        boolean fresh = nanos == Long.MIN_VALUE;
        double reads = current.value();
        double now = fresh ? reads : middle(reads, last, before);
        double seconds = fresh ? 0 : (scan.nanos() - nanos) * 1e-9;
        double sum = ampSeconds + (amps + now) / 2 * seconds;
        double moved = through + (Math.abs(amps) + Math.abs(now)) / 2 * seconds;
        double chipNow = places.accumulated != null && readings[places.accumulated.index()] instanceof Reading.Valid valid
                ? valid.value()
                : chip;
        boolean due = mark.isEmpty() || scan.nanos() - mark.get().nanos() >= MARK_NANOS;
        boolean certain = !fresh && Math.abs(chipNow - chip - now * seconds) <= Math.abs(now) * seconds + CHIP_AS;
        Optional<Mark> marked = due && certain ? Optional.of(new Mark(scan.nanos(), now, sum, moved, chipNow)) : mark;
        boolean flows = inForce.energised() && inForce.stage() == Closing.CURRENT;
        boolean full = flows && inForce.way() == Way.CHARGE && highest(readings, places) >= FULL_V;
        boolean empty = flows && inForce.way() == Way.DISCHARGE && lowest(readings, places) <= EMPTY_V;
        Counted counted = new Counted(scan.nanos(), now, reads, fresh ? reads : last, chipNow, sum, moved, marked,
                full || empty ? atEnd + 1 : 0, filled, filledAmps, emptied, taken);
        return counted.atEnd < CERTAIN ? counted : full ? counted.full() : counted.empty();
    }

    private Counted full() {
        return new Counted(nanos, amps, last, before, chip, ampSeconds, through, mark, atEnd, Optional.of(ampSeconds),
                Math.abs(amps), emptied, taken);
    }

    private Counted empty() {
        return new Counted(nanos, amps, last, before, chip, ampSeconds, through, mark, atEnd, filled, filledAmps,
                Optional.of(ampSeconds), filled.map(full -> full - ampSeconds));
    }

    private static double middle(double one, double two, double three) {
        return Math.max(Math.min(one, two), Math.min(Math.max(one, two), three));
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
