package rigwarden.logbook;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.run.Account;
import rigwarden.run.Event;
import rigwarden.warden.Breach;
import rigwarden.warden.Clearing;
import rigwarden.warden.Closing;
import rigwarden.warden.Failure;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.OrdersForTests;
import rigwarden.warden.Reading;
import rigwarden.warden.Request;
import rigwarden.warden.Rule;
import rigwarden.warden.Scan;
import rigwarden.warden.Severity;
import rigwarden.warden.Trip;
import rigwarden.warden.Warning;
import rigwarden.warden.Way;

/** A run out of a seeded stream: channels of mixed periods, jitter, failures, every kind of order and event. */
final class AnyRun {
    static final long SCAN_NANOS = 100_000_000;
    static final RunAbout ABOUT = new RunAbout("[rig]\nname = \"bench\"\n", "[[step]]\nkind = \"rest\"\n",
            Map.of("rigwarden", "0.1.0", "sqlite", "3.54.1"), "boot-1", 7, true, "2026-01-01T00:00:00Z", 1_000_000)
                    .calibrated(List.of("gain = 1\n", "gain = 2\n"));

    private static final List<Failure> FAILURES = List.copyOf(EnumSet.allOf(Failure.class));

    private final Random random;
    private final List<Channel> channels;
    private final Reading[] last;
    private final double failing;
    private final long jitterNanos;
    private long number;

    AnyRun(long seed, int channelCount, double failing, long jitterNanos) {
        random = new Random(seed);
        channels = channels(channelCount);
        last = new Reading[channelCount];
        this.failing = failing;
        this.jitterNanos = jitterNanos;
    }

    static List<Channel> channels(int count) {
        List<Channel> made = new ArrayList<>();
        for (int index = 0; index < count; index++) {
            long period = index % 3 == 2 ? 10 * SCAN_NANOS : SCAN_NANOS;
            made.add(new Channel(index, "cell_" + index + "_v", Role.CELL_VOLTS, index + 1, period,
                    125e-6 * (index + 1), 0.001 * index, 0.0015, 0.0004, 1.0, 4.0, 0));
        }
        return List.copyOf(made);
    }

    List<Channel> channels() {
        return channels;
    }

    Scan scan() {
        number++;
        long nanos = 5_000_000 + number * SCAN_NANOS + (jitterNanos == 0 ? 0 : random.nextLong(jitterNanos));
        List<Reading> readings = new ArrayList<>();
        for (Channel channel : channels) {
            last[channel.index()] = reading(channel, nanos);
            readings.add(last[channel.index()]);
        }
        return new Scan(number, nanos, List.copyOf(readings));
    }

    private Reading reading(Channel channel, long nanos) {
        Reading before = last[channel.index()];
        if (random.nextDouble() < failing) {
            Failure why = FAILURES.get(random.nextInt(FAILURES.size()));
            return before instanceof Reading.Failed && random.nextBoolean() ? before : new Reading.Failed(why, nanos);
        }
        boolean rests = channel.periodNanos() > SCAN_NANOS && number % 10 != 1;
        if (rests && before instanceof Reading.Valid) {
            return before;
        }
        long late = jitterNanos == 0 ? 1000L * channel.index() : random.nextLong(jitterNanos);
        if (jitterNanos != 0 && random.nextInt(50) == 0) {
            late -= 10_000_000_000L;
        }
        long code = random.nextInt(20) == 0 ? 0 : 26_000 + random.nextInt(400) - (random.nextInt(30) == 0 ? 60_000 : 0);
        return Reading.of(channel, code, nanos + late);
    }

    Orders orders() {
        return switch (random.nextInt(6)) {
            case 0 -> Orders.OFF_NOW;
            case 1, 2 -> Orders.OFF;
            case 3 -> OrdersForTests.path(number, Way.CHARGE, Closing.PRECHARGE, 0, 0);
            default -> OrdersForTests.path(number, random.nextBoolean() ? Way.CHARGE : Way.DISCHARGE, Closing.CURRENT,
                    10 + random.nextInt(2) * 0.1, 14.6);
        };
    }

    Inbox inbox() {
        return switch (random.nextInt(8)) {
            case 0 -> new Inbox(true, List.of());
            case 1 -> new Inbox(random.nextBoolean(), List.of(Request.CLEAR, Request.START, Request.CLEAR));
            default -> Inbox.EMPTY;
        };
    }

    List<Event> events() {
        List<Event> all = everyEvent();
        return switch (random.nextInt(20)) {
            case 0 -> all;
            case 1 -> List.of(all.get(random.nextInt(all.size())));
            default -> List.of();
        };
    }

    List<Event> everyEvent() {
        Channel where = channels.getFirst();
        Rule rule = new Rule(9, "cell high", "A cell above its ceiling.", EnumSet.of(Role.CELL_VOLTS), "3.65 V",
                500_000_000, Severity.TRIPS, Clearing.QUIET, _ -> Breach.NONE);
        Trip trip = new Trip(rule, where, 3.71, 3.65, 4_000, 12);
        return List.of(new Event.Started(), new Event.HeartbeatProved(0.25), new Event.StepBegun(2, "charge"),
                new Event.Waited(2, 3.5), new Event.Warned(new Warning(rule, where, Double.NaN, 3.6)),
                new Event.Tripped(trip, List.of(new Trip(rule, channels.getLast(), 3.8, 3.65, 5_000, 12))),
                new Event.Cleared(), new Event.StopRequested(),
                new Event.StepEnded(2, Ended.CUT_OFF, true,
                        new Account(1, Long.MAX_VALUE, 3, 4, Long.MIN_VALUE, 6)),
                new Event.Finished(Ended.SETTLED));
    }
}
