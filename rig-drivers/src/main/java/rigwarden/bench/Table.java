package rigwarden.bench;

import java.util.ArrayList;
import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.loop.Clock;
import rigwarden.rig.Channel;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;

/** The readings of the scan that is being taken. What is not read keeps its last reading, with its old time. */
final class Table {
    /** Gives one code, or says why not. */
    interface Measure {
        long code() throws BusFailure;
    }

    private final Clock clock;
    private final Reading[] readings;
    private long scanNanos;

    Table(Clock clock, List<Reading> before) {
        this.clock = clock;
        readings = before.toArray(Reading[]::new);
    }

    static List<Reading> unread(int channels, long nanos) {
        List<Reading> unread = new ArrayList<>();
        for (int i = 0; i < channels; i++) {
            unread.add(new Reading.Failed(Failure.NOT_READ, nanos));
        }
        return unread;
    }

    void begin(long nanos) {
        scanNanos = nanos;
    }

    /** Takes a reading now; nothing that goes wrong gets out. */
    void measure(Channel channel, Measure measure) {
        long code;
        try {
            code = measure.code();
        } catch (BusFailure e) {
            failed(channel, e.why());
            return;
        } catch (RuntimeException e) {
            failed(channel, Failure.NONSENSE);
            return;
        }
        readings[channel.index()] = Reading.of(channel, code, clock.nanos());
    }

    /** Enters a value in the channel's unit, unless the same reading is there already. */
    void value(Channel channel, double value, long takenNanos) {
        if (readings[channel.index()] instanceof Reading.Valid before && before.takenNanos() == takenNanos) {
            return;
        }
        long code = Math.round((value - channel.shift()) / channel.scale());
        readings[channel.index()] = Reading.of(channel, code, takenNanos);
    }

    /** Enters a failure; its time is that of the first scan without a valid reading. */
    void failed(Channel channel, Failure why) {
        failed(channel, why, scanNanos);
    }

    /** Enters the silence of something that is asked more seldom than once a scan: it lasts since its last answer. */
    void silent(Channel channel, Failure why) {
        long since = readings[channel.index()] instanceof Reading.Valid last ? last.takenNanos() : scanNanos;
        failed(channel, why, since);
    }

    private void failed(Channel channel, Failure why, long nanos) {
        int index = channel.index();
        if (readings[index] instanceof Reading.Failed before) {
            if (before.why() != why) {
                readings[index] = new Reading.Failed(why, before.sinceNanos());
            }
        } else {
            readings[index] = new Reading.Failed(why, nanos);
        }
    }

    Reading reading(Channel channel) {
        return readings[channel.index()];
    }

    List<Reading> readings() {
        return List.of(readings);
    }
}
