package rigwarden.paper;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rigwarden.logbook.LogbookException;
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
 * What a run file holds, as it was when the run was recorded; its steps are those that the findings are made of.
 *
 * @param rig it ran on
 * @param program it ran
 * @param told what its steps gave, and those of the runs that it went on with: the parts of a step that was broken off are one step
 * @param trip first cause of the last trip that nobody cleared
 */
public record StoredRun(Rig rig, Program program, EndedSteps.Told told, Optional<Trip> trip) {
    /**
     * Reads a run with all that it went on with.
     *
     * @param file of the run; the files of the runs before it lie beside it
     * @return nothing where this version refuses the rig or programme in it
     * @throws LogbookException where the run's own file is missing or cannot be read
     */
    public static Optional<StoredRun> whole(Path file) {
        try (RunReader reader = RunReader.open(file)) {
            Optional<Rig> rig = RunFindings.rig(reader);
            return rig.isPresent() && RigFile.read("rig", reader.about().rigText(), reader.about().calibrations()) instanceof Read.Sound<Rig> sound
                    && ProgramFile.stored("programme", reader.about().programmeText(), sound) instanceof Read.Sound<Program> program
                    ? AllParts.read(file, RunFindings::rig).map(all -> new StoredRun(rig.get(), program.value(), all.told(), trip(rig.get(), reader.events())))
                    : Optional.empty();
        }
    }

    private static Optional<Trip> trip(Rig rig, List<StoredEvent> events) {
        Optional<Trip> trip = Optional.empty();
        for (StoredEvent event : events) {
            trip = tripped(rig, trip, event);
        }
        return trip;
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
