package rigwarden.findings.trace;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.rig.Channel;
import rigwarden.rig.Channels;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * Scans as they would have been read with other calibrations: every value is worked out anew from its code. A cell that is the
 * difference of two taps is made from their codes, with the rounding with which it was stored.
 */
public final class Reread {
    /** A cell, its tap, and the tap below where there is one. */
    private record Made(Channel tap, Optional<Channel> below) {}

    private final List<Channel> channels;
    private final Map<Integer, Made> cells = new HashMap<>();

    /** For a rig with the calibrations that are to be read with; its channels are those of the scans in number and order. */
    public Reread(Rig rig) {
        channels = rig.channels();
        rig.inputs().stream().filter(input -> input.role() == Role.TAP_VOLTS).forEach(input ->
                cells.put(rig.column(Channels.cellName(input.cell())).orElseThrow().index(), new Made(rig.column(input.name()).orElseThrow(),
                        Channels.below(input, rig.inputs()).flatMap(below -> rig.column(below.name())))));
    }

    /** The same scan, read anew. */
    public Scan of(Scan stored) {
        List<Reading> readings = new ArrayList<>(channels.size());
        for (Channel channel : channels) {
            Made made = cells.get(channel.index());
            readings.add(switch (stored.readings().get(channel.index())) {
                case Reading.Failed failed -> failed;
                case Reading.Valid valid -> made == null
                        ? Reading.of(channel, valid.code(), valid.takenNanos())
                        : cell(stored, channel, made, valid);
            });
        }
        return new Scan(stored.number(), stored.nanos(), List.copyOf(readings));
    }

    /** What a tap that fails in this very scan left behind stays as it was stored. */
    private static Reading cell(Scan stored, Channel channel, Made made, Reading.Valid valid) {
        if (!(stored.readings().get(made.tap().index()) instanceof Reading.Valid upper)) {
            return valid;
        }
        double volts = made.tap().value(upper.code());
        if (made.below().isPresent()) {
            if (!(stored.readings().get(made.below().get().index()) instanceof Reading.Valid lower)) {
                return valid;
            }
            volts -= made.below().get().value(lower.code());
        }
        return Reading.of(channel, Math.round((volts - channel.shift()) / channel.scale()), valid.takenNanos());
    }
}
