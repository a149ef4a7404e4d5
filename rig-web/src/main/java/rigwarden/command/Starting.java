package rigwarden.command;

import java.util.List;
import java.util.Optional;
import rigwarden.live.Desk;
import rigwarden.program.Program;
import rigwarden.prove.Outcome;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Event;
import rigwarden.run.RunMachine;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** Asks once for the start of a proof's energised part, and gives up when nothing comes of it. Control thread. */
final class Starting {
    /** The start is asked for when every channel has been judged for a while. */
    private static final int SETTLED_SCANS = 30;
    /** A start that is taken is taken in the next scan. */
    private static final long LONGEST_NANOS = 5_000_000_000L;
    private static final double ON = 0.5;

    private final Program program;
    private final Desk desk;
    private final Channel arm;
    private int scans;
    private long askedNanos;
    private boolean started;
    private Optional<Outcome> refused = Optional.empty();

    Starting(Rig rig, Program program, Desk desk) {
        this.program = program;
        this.desk = desk;
        arm = rig.channel(Role.ARM);
    }

    /** Looks at a scan with what happened in it; what was found in it. */
    List<Outcome> take(Scan scan, List<Event> events) {
        started |= events.stream().anyMatch(Event.Started.class::isInstance);
        scans++;
        if (scans == SETTLED_SCANS) {
            askedNanos = scan.nanos();
            desk.ask(RunMachine.start(program));
        }
        if (scans > SETTLED_SCANS && !started && refused.isEmpty() && scan.nanos() - askedNanos >= LONGEST_NANOS) {
            refused = Optional.of(why(scan));
            return List.of(refused.orElseThrow());
        }
        return List.of();
    }

    private Outcome why(Scan scan) {
        boolean armed = scan.readings().get(arm.index()) instanceof Reading.Valid on && on.value() > ON;
        return armed
                ? new Outcome(Outcome.Part.AT_REST, "start", Outcome.Result.FAILED, "the start was not taken within 5 s: a channel is not healthy, or the arm key was off when it was asked for")
                : new Outcome(Outcome.Part.AT_REST, "arm key", Outcome.Result.FAILED, "the arm key is off: turn it, then prove again");
    }

    /** Why nothing was started, once that is known. */
    Optional<Outcome> refused() {
        return refused;
    }
}
