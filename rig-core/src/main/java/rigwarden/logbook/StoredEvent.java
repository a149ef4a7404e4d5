package rigwarden.logbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.run.Account;
import rigwarden.run.Event;
import rigwarden.warden.Rule;
import rigwarden.warden.Scan;
import rigwarden.warden.Trip;

/**
 * An event as a run file keeps it, one row.
 *
 * @param scan number of its scan
 * @param nanos monotonic time of its scan
 * @param kind word, for example {@code step_ended}; a trip's consequences follow it as {@code also_tripped}
 * @param step number of the step, from 1, if it belongs to one
 * @param words in words for a person
 * @param ended what ended the step or the programme
 * @param settled whether the cells were, for a step that ended
 * @param account sums of a step that ended
 * @param cause for trips and warnings
 * @param value seconds of a heartbeat proof, of an outage or of a clock that was set, volts without load, degrees Celsius of a wait, reading of a trip or warning
 */
public record StoredEvent(
        long scan,
        long nanos,
        String kind,
        OptionalInt step,
        String words,
        Optional<Ended> ended,
        Optional<Boolean> settled,
        Optional<Account> account,
        Optional<Cause> cause,
        OptionalDouble value) {

    /**
     * What a trip or warning hangs on.
     *
     * @param rule its number
     * @param channel index
     * @param limit what the reading was compared with, in the channel's unit; none if it was not a number
     * @param sinceNanos first breach, monotonic; a warning counts from its own scan
     */
    public record Cause(int rule, int channel, OptionalDouble limit, long sinceNanos) {}

    /** What {@link #kind} says where the clock on the wall was set; its value is by how much, s, forward positive. */
    public static final String CLOCK_SET = "clock_set";

    /** Something that happened beside the run, for example {@code confirmed} or {@code spot}; it belongs to the scan that was the newest. */
    static StoredEvent beside(long scan, long nanos, String kind, String words) {
        return beside(scan, nanos, kind, words, OptionalDouble.empty());
    }

    /** The same, with a number. */
    static StoredEvent beside(long scan, long nanos, String kind, String words, OptionalDouble value) {
        return new StoredEvent(scan, nanos, kind, OptionalInt.empty(), words, Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), value);
    }

    /** The rows of one event. */
    public static List<StoredEvent> of(Scan scan, Event event) {
        return switch (event) {
            case Event.Started _ -> plain(scan, "started", "an operator started the programme");
            case Event.Continued on -> valued(scan, "continued", OptionalInt.of(on.step()),
                    String.format(Locale.ROOT, "an operator let run %d go on, %.1f min after it was broken off", on.run(),
                            on.outageSeconds() / 60), on.outageSeconds());
            case Event.NotContinued not -> plain(scan, "not_continued", not.unmet().words());
            case Event.HeartbeatProved proved -> valued(scan, "heartbeat_proved", OptionalInt.empty(),
                    String.format(Locale.ROOT, "the contactor let go %.3f s after the last beat", proved.seconds()),
                    proved.seconds());
            case Event.StopProved proved -> valued(scan, "stop_proved", OptionalInt.empty(),
                    String.format(Locale.ROOT, "%s: the %s alone stopped the current %.3f s after the order", proved.device(),
                            proved.element().name().toLowerCase(Locale.ROOT), proved.seconds()), proved.seconds());
            case Event.NoLoadShown shown -> valued(scan, "no_load_shown", OptionalInt.empty(),
                    String.format(Locale.ROOT, "%s shows %.2f V without load", shown.source(), shown.volts()),
                    shown.volts());
            case Event.StepBegun begun -> List.of(new StoredEvent(scan.number(), scan.nanos(), "step_begun",
                    OptionalInt.of(begun.step()), begun.kind(), Optional.empty(), Optional.empty(), Optional.empty(),
                    Optional.empty(), OptionalDouble.empty()));
            case Event.StepEnded over -> List.of(new StoredEvent(scan.number(), scan.nanos(), "step_ended",
                    OptionalInt.of(over.step()), "ended by " + over.by().word(), Optional.of(over.by()),
                    Optional.of(over.settled()), Optional.of(over.account()), Optional.empty(),
                    OptionalDouble.empty()));
            case Event.Waited waited -> valued(scan, "waited", OptionalInt.of(waited.step()),
                    String.format(Locale.ROOT, "waits at %.1f °C", waited.celsius()), waited.celsius());
            case Event.Tripped tripped -> trips(scan, tripped);
            case Event.Warned warned -> List.of(caused(scan, "warned", warned.warning().rule(),
                    warned.warning().where(), warned.warning().value(), warned.warning().limit(), scan.nanos()));
            case Event.StopRequested _ -> plain(scan, "stop_requested", "a person stopped the run");
            case Event.Cleared _ -> plain(scan, "cleared", "a person cleared the trip");
            case Event.Finished finished -> List.of(new StoredEvent(scan.number(), scan.nanos(), "finished",
                    OptionalInt.empty(), "over by " + finished.by().word(), Optional.of(finished.by()),
                    Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty()));
        };
    }

    private static List<StoredEvent> trips(Scan scan, Event.Tripped tripped) {
        List<StoredEvent> rows = new ArrayList<>();
        rows.add(trip(scan, "tripped", tripped.first()));
        tripped.also().forEach(also -> rows.add(trip(scan, "also_tripped", also)));
        return List.copyOf(rows);
    }

    private static StoredEvent trip(Scan scan, String kind, Trip trip) {
        return caused(scan, kind, trip.rule(), trip.where(), trip.value(), trip.limit(), trip.sinceNanos());
    }

    private static StoredEvent caused(
            Scan scan, String kind, Rule rule, Channel where, double value, double limit, long sinceNanos) {
        String unit = where.quantity().symbol();
        String words = String.format(Locale.ROOT, "%s: %s reads %.4f %s, limit %.4f %s",
                rule, where.name(), value, unit, limit, unit);
        return new StoredEvent(scan.number(), scan.nanos(), kind, OptionalInt.empty(), words, Optional.empty(),
                Optional.empty(), Optional.empty(),
                Optional.of(new Cause(rule.number(), where.index(), number(limit), sinceNanos)), number(value));
    }

    private static List<StoredEvent> plain(Scan scan, String kind, String words) {
        return List.of(new StoredEvent(scan.number(), scan.nanos(), kind, OptionalInt.empty(), words,
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty()));
    }

    private static List<StoredEvent> valued(Scan scan, String kind, OptionalInt step, String words, double value) {
        return List.of(new StoredEvent(scan.number(), scan.nanos(), kind, step, words, Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), number(value)));
    }

    /** SQLite keeps no NaN: such a value is none. */
    private static OptionalDouble number(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value + 0.0);
    }
}
