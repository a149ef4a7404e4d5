package rigwarden.command;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rigwarden.logbook.Outcome;
import rigwarden.program.Ended;
import rigwarden.run.Answer;
import rigwarden.run.Event;
import rigwarden.warden.Trip;

/** Tells of a real run as it goes, and knows how it ended. */
final class Ending {
    private final PrintStream out;
    private Optional<Trip> trip = Optional.empty();
    private Optional<Answer.Unmet> unmet = Optional.empty();
    private boolean continued;
    private boolean finished;

    Ending(PrintStream out) {
        this.out = out;
    }

    /** Takes what happened in one scan; control thread. */
    void take(List<Event> events) {
        for (Event event : events) {
            switch (event) {
                case Event.Started _ -> {
                    out.println("  started");
                    trip = Optional.empty();
                }
                case Event.StepBegun e -> out.println("  step " + e.step() + ": " + e.kind().replace('_', ' '));
                case Event.StepEnded e -> out.println("  step " + e.step() + " ended by " + e.by().word().replace('_', ' '));
                case Event.HeartbeatProved e ->
                    out.printf("  heartbeat withheld: contactor open after %.1f s%n", e.seconds());
                case Event.StopProved e -> out.printf("  %s: the %s alone stopped the current in %.1f s%n", e.device(),
                        e.element().name().toLowerCase(Locale.ROOT), e.seconds());
                case Event.Waited e -> out.printf("  step %d waits: cell at %.1f °C%n", e.step(), e.celsius());
                case Event.Warned e -> out.println("  notice: " + e.warning().rule().sentence());
                case Event.Tripped e -> {
                    if (trip.isEmpty()) {
                        out.println("  TRIPPED by rule " + e.first().rule() + ": " + e.first().rule().sentence());
                    }
                    trip = trip.or(() -> Optional.of(e.first()));
                }
                case Event.Continued e -> {
                    out.printf("  goes on with run %04d at step %d, %.1f min after it was broken off%n", e.run(), e.step(),
                            e.outageSeconds() / 60);
                    continued = true;
                }
                case Event.NotContinued e -> {
                    out.println("  NOT CONTINUED. " + e.unmet().words());
                    unmet = Optional.of(e.unmet());
                }
                case Event.Cleared _ -> out.println("  cleared; start anew for another run");
                case Event.StopRequested _ -> out.println("  stopped by a person");
                case Event.Finished e -> finished = went(e.by());
                case Event.NoLoadShown _ -> { }
            }
        }
    }

    /** Whether a programme that ended so came to its end. */
    private static boolean went(Ended by) {
        return switch (by) {
            case STOPPED, NEVER_FIT, NOT_CONTINUED, CUT, TRIPPED -> false;
            case TAPER, CEILING, CUT_OFF, CHARGER, SINK, PROTECTION, SETTLED, PROVED, TIME, CHARGE_REACHED -> true;
        };
    }

    /** Whether it went on with a run that had been broken off. */
    boolean continued() {
        return continued;
    }

    boolean tripped() {
        return trip.isPresent();
    }

    Outcome outcome() {
        return trip.isPresent() ? Outcome.TRIPPED : finished ? Outcome.FINISHED : Outcome.STOPPED;
    }

    String words() {
        return trip.map(t -> "rule " + t.rule()).or(() -> unmet.map(u -> "not continued. " + u.words())).orElse("");
    }

    int exit() {
        return switch (outcome()) {
            case TRIPPED -> Exits.TRIPPED;
            case FINISHED -> Exits.DONE;
            case STOPPED, INTERRUPTED, RUNNING -> Exits.STOPPED;
        };
    }
}
