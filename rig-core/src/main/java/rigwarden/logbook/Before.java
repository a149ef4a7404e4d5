package rigwarden.logbook;

import rigwarden.warden.Closing;
import rigwarden.warden.Failure;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Way;

/** What the next row depends on of the rows so far. Copied at each commit, copied back when one fails. */
final class Before {
    final boolean[] valid;
    final long[] code;
    final long[] taken;
    /** Time taken less time of the scan, when the channel was fresh last. */
    final long[] offset;
    final Failure[] why;
    final long[] since;
    private String kind = "";
    private Way way = Way.CHARGE;
    private Closing stage = Closing.PRECHARGE;
    private double amps;
    private double volts;

    Before(int channels) {
        valid = new boolean[channels];
        code = new long[channels];
        taken = new long[channels];
        offset = new long[channels];
        why = new Failure[channels];
        since = new long[channels];
    }

    void copy(Before other) {
        System.arraycopy(other.valid, 0, valid, 0, valid.length);
        System.arraycopy(other.code, 0, code, 0, code.length);
        System.arraycopy(other.taken, 0, taken, 0, taken.length);
        System.arraycopy(other.offset, 0, offset, 0, offset.length);
        System.arraycopy(other.why, 0, why, 0, why.length);
        System.arraycopy(other.since, 0, since, 0, since.length);
        kind = other.kind;
        way = other.way;
        stage = other.stage;
        amps = other.amps;
        volts = other.volts;
    }

    /** Whether this reading was not there a scan ago. */
    boolean fresh(int channel, Reading.Valid now) {
        return !valid[channel] || taken[channel] != now.takenNanos() || code[channel] != now.code();
    }

    /** Whether this failure, or its reason, was not there a scan ago. */
    boolean began(int channel, Reading.Failed now) {
        return why[channel] != now.why() || since[channel] != now.sinceNanos();
    }

    /** Notes orders; true if they say something else than the orders before. */
    boolean ordersChange(Orders orders) {
        return switch (orders) {
            case Orders.Off off -> {
                boolean changed = !kind.equals(off.urgency().name());
                kind = off.urgency().name();
                yield changed;
            }
            case Orders.Energised on -> {
                boolean changed = !kind.equals("PATH") || way != on.way() || stage != on.stage()
                        || amps != on.set().amps() || volts != on.set().volts();
                kind = "PATH";
                way = on.way();
                stage = on.stage();
                amps = on.set().amps();
                volts = on.set().volts();
                yield changed;
            }
        };
    }
}
