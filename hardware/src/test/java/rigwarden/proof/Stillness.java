package rigwarden.proof;

import java.util.List;
import java.util.stream.IntStream;
import rigwarden.emulated.EmulatedRig;
import rigwarden.loop.Recorder;
import rigwarden.rig.Calibratable;
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
    /** What the wire may spoil of the 144,000 readings of one channel. */
    private static final int MOST_STRAYS = 20;

    private final Rig wired;
    private final List<Channel> volts;
    private double restSince = Double.NaN;
    private boolean held;
    private final long[] codes;
    private final long[] since;
    private final int[] odd;
    private final int[] strays;
    private long longest;

    Stillness(Rig rig) {
        wired = rig;
        List<String> inputs = rig.inputs().stream().map(VoltageInput::name).toList();
        volts = rig.channels().stream().filter(c -> inputs.contains(c.name()) && c.role() != Role.BUS_VOLTS).toList();
        codes = new long[volts.size()];
        since = new long[volts.size()];
        odd = new int[volts.size()];
        strays = new int[volts.size()];
    }

    /** Holds all that the cells give a rig that rests, and lets go of it again. */
    void rested(EmulatedRig rig) {
        double rested = rig.clock().nanos() - restSince;
        boolean hold = rested > FROM && rested < TO;
        if (hold && !held) {
            wired.inputs().stream().filter(input -> input.role() != Role.BUS_VOLTS).forEach(input -> rig.hold(input.name(), sum(rig, ground(input), input.cell())));
            rig.hold(Calibratable.PACK, sum(rig, 0, wired.cells().series()));
        }
        if (!hold && held) {
            volts.forEach(c -> rig.release(c.name()));
            rig.release(Calibratable.PACK);
        }
        held = hold;
    }

    /** The tap that an island's converter measures from. */
    private int ground(VoltageInput input) {
        return wired.inputs().stream().filter(other -> other.converter().equals(input.converter()) && other.role() != Role.BUS_VOLTS).mapToInt(VoltageInput::cell).min().orElse(1) - 1;
    }

    private static double sum(EmulatedRig rig, int from, int to) {
        return IntStream.range(from, to).mapToDouble(rig.world()::cellVolts).sum();
    }

    @Override
    public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
        for (Event event : events) {
            if (event instanceof Event.StepBegun begun) {
                restSince = begun.kind().equals("rest") ? scan.nanos() : Double.NaN;
            }
        }
        long least = Long.MAX_VALUE;
        for (int i = 0; i < codes.length; i++) {
            if (scan.readings().get(volts.get(i).index()) instanceof Reading.Valid valid) {
                odd[i] = valid.code() == codes[i] ? 0 : odd[i] + 1;
                strays[i] += valid.code() == codes[i] ? 0 : 1;
                if (odd[i] > 1 || strays[i] > MOST_STRAYS) {
                    codes[i] = valid.code();
                    since[i] = valid.takenNanos();
                    odd[i] = 0;
                    strays[i] = 0;
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
