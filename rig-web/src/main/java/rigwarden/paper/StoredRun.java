package rigwarden.paper;

import java.util.List;
import java.util.Optional;
import rigwarden.findings.StepFinding;
import rigwarden.findings.Tally;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.warden.Rules;
import rigwarden.warden.Trip;

/**
 * What a run file holds, as it was when the run was recorded.
 *
 * @param rig it ran on
 * @param program it ran
 * @param steps that ended
 * @param trip first cause of the last trip that nobody cleared
 */
public record StoredRun(Rig rig, Program program, List<StepFinding> steps, Optional<Trip> trip) {
    /**
     * Reads a whole run file: seconds for a night.
     *
     * @return nothing where this version refuses the rig or programme in it
     */
    public static Optional<StoredRun> read(RunReader reader) {
        if (RigFile.read("rig", reader.about().rigText()) instanceof Read.Sound<Rig> rig
                && ProgramFile.read("programme", reader.about().programmeText(), rig) instanceof Read.Sound<Program> program
                && rig.value().channels().size() == reader.channels().size()) {
            return Optional.of(read(reader, rig.value(), program.value()));
        }
        return Optional.empty();
    }

    private static StoredRun read(RunReader reader, Rig rig, Program program) {
        Tally tally = new Tally(rig);
        Optional<Trip> trip = Optional.empty();
        try (Cycles cycles = reader.cycles()) {
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                tally.scan(cycle.scan());
                for (StoredEvent event : cycle.events()) {
                    mark(tally, event);
                    trip = tripped(rig, trip, event);
                }
            }
        }
        return new StoredRun(rig, program, tally.steps(), trip);
    }

    private static void mark(Tally tally, StoredEvent event) {
        switch (event.kind()) {
            case "step_begun" -> tally.begun(event.step().orElseThrow(), event.words());
            case "step_ended" -> tally.ended(event.ended().orElseThrow(), event.settled().orElse(false),
                    event.account().orElseThrow());
            case String _ -> { }
        }
    }

    private static Optional<Trip> tripped(Rig rig, Optional<Trip> before, StoredEvent event) {
        return switch (event.kind()) {
            case "tripped" -> before.or(() -> event.cause().flatMap(cause -> trip(rig, event, cause)));
            case "cleared" -> Optional.empty();
            case String _ -> before;
        };
    }

    private static Optional<Trip> trip(Rig rig, StoredEvent event, StoredEvent.Cause cause) {
        return Rules.of(rig).stream().filter(r -> r.number() == cause.rule()).findFirst().map(rule ->
                new Trip(rule, rig.channels().get(cause.channel()), event.value().orElse(Double.NaN),
                        cause.limit().orElse(Double.NaN), cause.sinceNanos(), event.scan()));
    }
}
