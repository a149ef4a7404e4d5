package rigwarden.command;

import java.io.PrintStream;
import java.util.List;
import java.util.Optional;
import rigwarden.logbook.Outcome;
import rigwarden.program.Ended;
import rigwarden.run.Event;
import rigwarden.warden.Trip;

/** Tells of a real run as it goes, and knows how it ended. */
final class Ending {
    private final PrintStream out;
    private Optional<Trip> trip = Optional.empty();
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
                case Event.Waited e -> out.printf("  step %d waits: cell at %.1f °C%n", e.step(), e.celsius());
                case Event.Warned e -> out.println("  notice: " + e.warning().rule().sentence());
                case Event.Tripped e -> {
                    if (trip.isEmpty()) {
                        out.println("  TRIPPED by rule " + e.first().rule() + ": " + e.first().rule().sentence());
                    }
                    trip = trip.or(() -> Optional.of(e.first()));
                }
                case Event.Cleared _ -> out.println("  cleared; start anew for another run");
                case Event.StopRequested _ -> out.println("  stopped by a person");
                case Event.Finished e -> finished = e.by() != Ended.STOPPED && e.by() != Ended.NEVER_FIT;
                case Event.NoLoadShown _ -> { }
            }
        }
    }

    Outcome outcome() {
        return trip.isPresent() ? Outcome.TRIPPED : finished ? Outcome.FINISHED : Outcome.STOPPED;
    }

    String words() {
        return trip.map(t -> "rule " + t.rule()).orElse("");
    }

    int exit() {
        return switch (outcome()) {
            case TRIPPED -> Exits.TRIPPED;
            case FINISHED -> Exits.DONE;
            case STOPPED, INTERRUPTED, RUNNING -> Exits.STOPPED;
        };
    }
}
