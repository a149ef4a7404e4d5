package rigwarden.proof;

import java.util.List;
import rigwarden.loop.Recorder;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** For how long the code of a cell's or tap's voltage stood still at most; a reading that failed neither ends a stillness nor is one. */
final class Stillness implements Recorder {
    private static final double HOUR = 3600e9;

    private final List<Channel> volts;
    private final long[] codes;
    private final long[] since;
    private long longest;

    Stillness(Rig rig) {
        volts = rig.channels().stream().filter(c -> c.role() == Role.CELL_VOLTS || c.role() == Role.TAP_VOLTS).toList();
        codes = new long[volts.size()];
        since = new long[volts.size()];
    }

    @Override
    public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
        for (int i = 0; i < codes.length; i++) {
            if (scan.readings().get(volts.get(i).index()) instanceof Reading.Valid valid) {
                if (valid.code() != codes[i]) {
                    codes[i] = valid.code();
                    since[i] = valid.takenNanos();
                }
                longest = Math.max(longest, valid.takenNanos() - since[i]);
            }
        }
    }

    double hours() {
        return longest / HOUR;
    }
}
