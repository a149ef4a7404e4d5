package rigwarden.warden;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** Channels that are silent, old or absurd. What cannot be seen cannot be guarded. */
final class ChannelRules {
    private static final Set<Role> OWN = roles(false);
    private static final Set<Role> INSTRUMENTS = roles(true);
    private static final int UNSURE = 30;

    private ChannelRules() {}

    private static Set<Role> roles(boolean ofInstrument) {
        Set<Role> roles = EnumSet.allOf(Role.class);
        roles.removeIf(role -> role.ofInstrument() != ofInstrument || role.carried());
        return roles;
    }

    static List<Rule> of(Rig rig) {
        double polls = rig.channels().stream().filter(c -> c.role().ofInstrument()).mapToLong(Channel::staleNanos).max().orElse(0) * 1e-9;
        return List.of(
                Rules.trips(31, "channel failed", "A channel has had no valid reading for 2.5 of its periods.",
                        OWN, "2.5 periods", 0, view -> failed(view, view.places().own, true)),
                Rules.trips(32, "channel stale", "A channel's last reading is older than 2.5 of its periods.",
                        OWN, "2.5 periods", 0, view -> stale(view, view.places().own)),
                Rules.trips(33, "channel implausible",
                        "A channel reads what its place cannot have: a cut wire, a blown sense fuse, a dead reference.",
                        OWN, "range of the channel", 0.2, view -> implausible(view, view.places().own)),
                Rules.trips(36, "channel unreliable",
                        "A channel fails so often that nothing can be concluded from it: more than one reading in four.",
                        OWN, "one in four, over some seconds", 0, ChannelRules::unreliable),
                Rules.trips(34, "instrument silent", "Source or sink has not answered for 2.5 of its polls.",
                        INSTRUMENTS, "2.5 polls", 0, ChannelRules::silent),
                Rules.trips(56, "instrument talks nonsense",
                        "Source or sink says for two of its polls and more what it cannot do: another instrument, a garbled line.",
                        INSTRUMENTS, "its own range", polls, view -> implausible(view, view.places().instruments)),
                Rules.trips(35, "instrument on although off",
                        "Source or sink says that its output is on although it was ordered off.",
                        Set.of(Role.SOURCE_ON, Role.SINK_ON), "5 s after the order", 0.5,
                        view -> view.energised() ? restingOn(view) : stillOn(view)));
    }

    /** Of a channel that is scanned the last valid reading is one period older than the first that failed; an instrument's silence begins with its last answer. */
    private static Breach failed(View view, Channel[] channels, boolean scanned) {
        if (!view.anyFailed()) {
            return Breach.NONE;
        }
        for (Channel channel : channels) {
            if (view.reading(channel) instanceof Reading.Failed failed) {
                long unseen = view.nanos() - failed.sinceNanos() + (scanned ? channel.periodNanos() : 0);
                if (unseen >= channel.staleNanos()) {
                    return new Breach(channel.index(), unseen * 1e-9, channel.staleNanos() * 1e-9);
                }
            }
        }
        return Breach.NONE;
    }

    private static Breach stale(View view, Channel[] channels) {
        if (!view.anyStale()) {
            return Breach.NONE;
        }
        for (Channel channel : channels) {
            if (view.reading(channel) instanceof Reading.Valid valid
                    && view.nanos() - valid.takenNanos() > channel.staleNanos()) {
                return new Breach(channel.index(), (view.nanos() - valid.takenNanos()) * 1e-9,
                        channel.staleNanos() * 1e-9);
            }
        }
        return Breach.NONE;
    }

    private static Breach silent(View view) {
        Breach failed = failed(view, view.places().instruments, false);
        return failed.found() ? failed : stale(view, view.places().instruments);
    }

    private static Breach implausible(View view, Channel[] channels) {
        if (!view.anyImplausible()) {
            return Breach.NONE;
        }
        for (Channel channel : channels) {
            if (view.reading(channel) instanceof Reading.Valid valid && !channel.plausible(valid.value())) {
                double limit = valid.value() < channel.lowest() ? channel.lowest() : channel.highest();
                return new Breach(channel.index(), valid.value(), limit);
            }
        }
        return Breach.NONE;
    }

    private static Breach unreliable(View view) {
        int[] unsure = view.memory().unsure();
        for (Channel channel : view.places().own) {
            if (unsure[channel.index()] >= UNSURE) {
                return new Breach(channel.index(), unsure[channel.index()], UNSURE);
            }
        }
        return Breach.NONE;
    }

    /** While a device works every other must be off: they were, when the path was closed. */
    private static Breach restingOn(View view) {
        for (Channel output : view.places().outputs) {
            if (view.places().rests(output, view.memory().inForce()) && view.on(output)) {
                return new Breach(output.index(), 1, 0);
            }
        }
        return Breach.NONE;
    }

    private static Breach stillOn(View view) {
        if (view.stageNanos() < 5_000_000_000L) {
            return Breach.NONE;
        }
        for (Channel output : view.places().outputs) {
            if (view.on(output)) {
                return new Breach(output.index(), 1, 0);
            }
        }
        return Breach.NONE;
    }
}
