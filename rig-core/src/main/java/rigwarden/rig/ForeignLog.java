package rigwarden.rig;

import java.util.List;

/**
 * A log from elsewhere: nothing is known of the instruments that wrote it but what its map states. The charge may be
 * counted by the instrument itself (a channel of {@link Role#ACCUMULATED}); then its clock is the log's own.
 *
 * @param name a person's name for the kind of log
 * @param scanNanos usual time between two rows while current flows
 * @param cells what was under test
 * @param channels every channel of a row, by index
 * @param gainLimits what the current, and a counted charge, may be off by, limits ±, relative
 * @param offsetLimitsAmps the same, independent of the current, limits ±, A
 * @param steps smallest change that each channel's reading shows, in the channel's unit, by index; codes are finer
 */
public record ForeignLog(String name, long scanNanos, Cells cells, List<Channel> channels, double gainLimits,
        double offsetLimitsAmps, List<Double> steps) implements Traced {
    public ForeignLog {
        channels = List.copyOf(channels);
        steps = List.copyOf(steps);
        if (channels.size() != steps.size()) {
            throw new IllegalArgumentException(channels.size() + " channels and " + steps.size() + " steps");
        }
    }

    /** Smallest change that a channel's reading shows, in its unit. */
    public double step(Channel channel) {
        return steps.get(channel.index());
    }
}
