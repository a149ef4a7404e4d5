package rigwarden.warden;

import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;

/**
 * What rules look back on beyond the last two scans. Immutable.
 *
 * @param trail temperatures of the last minutes
 * @param half a scan of the last half second, whole
 * @param second a scan half a second to a second old, whole; older while channels fail
 * @param learnt resistance between the measuring points of pack and cells
 * @param flowedNanos when more than 1 A flowed last
 * @param rest cell voltages since everything is off
 */
record Past(Trail trail, Scan half, Scan second, Learnt learnt, long flowedNanos, RestTrail rest) {
    private static final long HALF_NANOS = 500_000_000L;

    static Past blank(Scan none) {
        return new Past(Trail.EMPTY, none, none, Learnt.NOTHING, none.nanos(), RestTrail.EMPTY);
    }

    /** After one more scan. */
    Past then(Scan scan, Reading[] readings, Places places, InForce inForce) {
        boolean halfOver = scan.nanos() - half.nanos() >= HALF_NANOS && whole(readings, places);
        boolean flows = readings[places.current.index()] instanceof Reading.Valid valid
                && Math.abs(valid.value()) > Envelope.NO_CURRENT_A + places.current.uncertainty(valid.value());
        RestTrail off = inForce.energised() ? RestTrail.EMPTY : rest.then(scan, readings, places.cells);
        Trail temperatures = trail.due(scan.nanos()) ? trail.with(scan, places.temperatures) : trail;
        Learnt path = learnt.then(scan, readings, places, inForce);
        if (!halfOver && !flows && off == rest && temperatures == trail && path == learnt) {
            return this;
        }
        return new Past(temperatures, halfOver ? scan : half, halfOver ? half : second, path,
                flows ? scan.nanos() : flowedNanos, off);
    }

    /** Only a scan that shows the current and every cell can be compared with later. */
    private static boolean whole(Reading[] readings, Places places) {
        boolean whole = readings[places.current.index()] instanceof Reading.Valid;
        for (Channel cell : places.cells) {
            whole &= readings[cell.index()] instanceof Reading.Valid;
        }
        return whole;
    }

    /** What a channel read half a second to a second ago; the value given where it was not valid. */
    double earlier(Channel channel, double otherwise) {
        return channel.index() < second.readings().size()
                        && second.readings().get(channel.index()) instanceof Reading.Valid valid
                ? valid.value()
                : otherwise;
    }
}
