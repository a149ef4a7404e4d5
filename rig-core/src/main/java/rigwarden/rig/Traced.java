package rigwarden.rig;

import java.util.List;
import java.util.Optional;

/** Where rows came from, as far as whoever reads them must know: a rig of ours, or a log that somebody else wrote. */
public sealed interface Traced permits Rig, ForeignLog {
    /** A person's name for it. */
    String name();

    /** Time between two rows while current flows: of a rig its period, of a log what is usual in it. */
    long scanNanos();

    /** What is under test. */
    Cells cells();

    /** Every channel of a row, by index. */
    List<Channel> channels();

    /** Calibrations that it was read with; a log's own are in its map. */
    default List<ChannelCalibration> calibrations() {
        return List.of();
    }

    /** The only channel of a role; throws where there is none. */
    default Channel channel(Role role) {
        for (Channel channel : channels()) {
            if (channel.role() == role) {
                return channel;
            }
        }
        throw new IllegalArgumentException("no channel has the role " + role);
    }

    /** The only channel of a role that some lack. */
    default Optional<Channel> possible(Role role) {
        return channels().stream().filter(c -> c.role() == role).findFirst();
    }

    /** All channels of a role, in order of index. */
    default List<Channel> channels(Role role) {
        return channels().stream().filter(c -> c.role() == role).toList();
    }

    /** A channel by its column name; empty where there is none. */
    default Optional<Channel> column(String name) {
        return channels().stream().filter(c -> c.name().equals(name)).findFirst();
    }
}
