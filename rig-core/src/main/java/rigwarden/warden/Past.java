package rigwarden.warden;

import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;

/**
 * What rules look back on beyond the last two scans. Immutable.
 *
 * @param trail temperatures of the last minutes
 * @param half a scan of the last half second, whole
 * @param second a scan half a second to a second old, whole; older while channels fail
 * @param third one from half a second before that
 * @param learnt resistance between the measuring points of pack and cells
 * @param flowedNanos when more than 1 A flowed last
 * @param rest cell voltages and temperatures since everything is off
 * @param counted charge since the first scan
 * @param slow a scan of the last half minute, whole
 * @param minute a scan half a minute to a minute old, whole
 * @param older one from half a minute before that
 */
record Past(
        Trail trail,
        Scan half,
        Scan second,
        Scan third,
        Learnt learnt,
        long flowedNanos,
        RestTrail rest,
        Counted counted,
        Scan slow,
        Scan minute,
        Scan older) {
    private static final long HALF_NANOS = 500_000_000L;
    private static final long SLOW_NANOS = 30_000_000_000L;

    static Past blank(Scan none, Swing before) {
        return new Past(Trail.EMPTY, none, none, none, Learnt.NOTHING, none.nanos(), RestTrail.EMPTY,
                Counted.from(before), none, none, none);
    }

    /** After one more scan. */
    Past then(Scan scan, Reading[] readings, Places places, InForce inForce) {
        boolean whole = whole(readings, places);
        boolean halfOver = whole && scan.nanos() - half.nanos() >= HALF_NANOS;
        boolean slowOver = whole && scan.nanos() - slow.nanos() >= SLOW_NANOS;
        boolean flows = readings[places.current.index()] instanceof Reading.Valid valid
                && Math.abs(valid.value()) > Envelope.NO_CURRENT_A + places.current.uncertainty(valid.value());
        return new Past(trail.due(scan.nanos()) ? trail.with(scan, places.temperatures) : trail,
                halfOver ? scan : half, halfOver ? half : second, halfOver ? second : third,
                learnt.then(scan, readings, places, inForce),
                flows ? scan.nanos() : flowedNanos,
                inForce.energised() ? RestTrail.EMPTY : rest.then(scan, readings, places),
                counted.then(scan, readings, places, inForce),
                slowOver ? scan : slow, slowOver ? slow : minute, slowOver ? minute : older);
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
        return value(second, channel, otherwise);
    }

    /**
     * How far a channel has moved within a second, the lesser of two looks back: what one false reading long ago says
     * otherwise is no movement.
     */
    double moved(Channel channel, double now) {
        return lesser(now - value(second, channel, now), now - value(third, channel, now));
    }

    /** How far it has moved within a minute or so, likewise. */
    double movedSlowly(Channel channel, double now) {
        return lesser(now - value(minute, channel, now), now - value(older, channel, now));
    }

    private static double lesser(double one, double other) {
        return one * other <= 0 ? 0 : Math.abs(one) < Math.abs(other) ? one : other;
    }

    /** What a channel read half a minute to a minute ago; the value given where it was not valid. */
    double aMinuteAgo(Channel channel, double otherwise) {
        return value(minute, channel, otherwise);
    }

    private static double value(Scan scan, Channel channel, double otherwise) {
        return channel.index() < scan.readings().size()
                        && scan.readings().get(channel.index()) instanceof Reading.Valid valid
                ? valid.value()
                : otherwise;
    }
}
