package rigwarden.live;

import java.util.List;
import rigwarden.rig.Channel;

/**
 * Readings thinned for a chart. In each bucket stand the lowest and the highest valid value of each channel, so that a
 * reading of one scan stays at any zoom; {@code NaN} where a bucket has none.
 *
 * @param seconds beginning of each bucket, elapsed, s
 * @param lines one for each channel
 */
public record Trace(double[] seconds, List<Line> lines) {
    /** One channel: its lowest and highest value by bucket. */
    public record Line(Channel channel, double[] low, double[] high) {}
}
