package rigwarden.proof;

import java.util.List;
import rigwarden.emulated.EmulatedRig;
import rigwarden.loop.Recorder;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * Makes the voltages of a rest stand still, and tells for how long every code of them did at most; a reading that failed, or one alone
 * that the wire has spoilt, neither ends a stillness nor is one. A model's cells never come quite to rest, those on a bench do, as far as a converter can see.
 */
final class Stillness implements Recorder {
    private static final double HOUR = 3600e9;
    /** A rest is still from here to there, from its beginning. */
    private static final double FROM = 3 * HOUR;
    private static final double TO = 7 * HOUR;

    private final List<Channel> volts;
    private double restSince = Double.NaN;
    private boolean held;
    private Scan newest;
    private final long[] codes;
    private final long[] since;
    private final int[] odd;
    private long longest;

    Stillness(Rig rig) {
        List<String> inputs = rig.inputs().stream().map(VoltageInput::name).toList();
        volts = rig.channels().stream().filter(c -> inputs.contains(c.name()) && c.role() != Role.BUS_VOLTS).toList();
        codes = new long[volts.size()];
        since = new long[volts.size()];
        odd = new int[volts.size()];
    }

    /** Holds the inputs of a rig that rests at what they were last read, and lets go of them again. */
    void rested(EmulatedRig rig) {
        double rested = rig.clock().nanos() - restSince;
        boolean hold = rested > FROM && rested < TO;
        if (hold && !held) {
            volts.forEach(c -> rig.hold(c.name(), ((Reading.Valid) newest.readings().get(c.index())).value()));
        }
        if (!hold && held) {
            volts.forEach(c -> rig.release(c.name()));
        }
        held = hold;
    }

    @Override
    public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
        newest = scan;
        for (Event event : events) {
            if (event instanceof Event.StepBegun begun) {
                restSince = begun.kind().equals("rest") ? scan.nanos() : Double.NaN;
            }
        }
        long least = Long.MAX_VALUE;
        for (int i = 0; i < codes.length; i++) {
            if (scan.readings().get(volts.get(i).index()) instanceof Reading.Valid valid) {
                odd[i] = valid.code() == codes[i] ? 0 : odd[i] + 1;
                if (odd[i] > 1) {
                    codes[i] = valid.code();
                    since[i] = valid.takenNanos();
                    odd[i] = 0;
                }
            }
            least = Math.min(least, scan.nanos() - since[i]);
        }
        longest = Math.max(longest, least);
    }

    double hours() {
        return longest / HOUR;
    }
}
