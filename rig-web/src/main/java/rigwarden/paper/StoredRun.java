package rigwarden.paper;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rigwarden.findings.Joined;
import rigwarden.findings.trace.StepMark;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Account;
import rigwarden.run.PickUp;
import rigwarden.warden.Rules;
import rigwarden.warden.Trip;

/**
 * What a run file holds, as it was when the run was recorded; its steps are those that the findings are made of.
 *
 * @param rig it ran on
 * @param program it ran
 * @param told what its steps gave
 * @param trip first cause of the last trip that nobody cleared
 */
public record StoredRun(Rig rig, Program program, EndedSteps.Told told, Optional<Trip> trip) {
    /**
     * Reads a run with all that it went on with: the parts of a step that was broken off are one step here.
     *
     * @param file of the run; the files of the runs before it lie beside it
     * @return nothing where this version refuses the rig or programme in it
     * @throws LogbookException where one of these files is missing or cannot be read
     */
    public static Optional<StoredRun> whole(Path file) {
        return whole(file, Optional.empty());
    }

    private static Optional<StoredRun> whole(Path file, Optional<PickUp> next) {
        try (RunReader reader = RunReader.open(file)) {
            RunAbout about = reader.about();
            Optional<StoredRun> own = read(reader, next.map(place -> part(place, about.from())));
            Optional<Double> outage = reader.events().stream().filter(e -> e.kind().equals("continued"))
                    .map(e -> e.value().orElse(0)).findFirst();
            if (outage.isEmpty() || about.from().isEmpty() || own.isEmpty()) {
                return own;
            }
            PickUp from = about.from().get();
            Path before = file.resolveSibling(Spots.say("%04d.db", from.run()));
            return whole(before, about.from()).map(earlier -> own.get().after(earlier, outage.get(), from.brokenAmps()));
        }
    }

    /** What the step gave in the run that was broken off alone, without a run that this one had gone on with. */
    private static Account part(PickUp place, Optional<PickUp> earlier) {
        return earlier.filter(from -> from.step() == place.step())
                .map(from -> place.before().minus(from.before()))
                .orElse(place.before());
    }

    private StoredRun after(StoredRun earlier, double outageSeconds, double amps) {
        Map<Integer, String> untold = new HashMap<>(earlier.told.untold());
        untold.putAll(told.untold());
        return new StoredRun(rig, program, new EndedSteps.Told(Joined.of(earlier.told.steps(), outageSeconds, amps, told.steps()), untold), trip);
    }

    private static Optional<StoredRun> read(RunReader reader, Optional<Account> open) {
        Optional<Rig> rig = RunFindings.rig(reader);
        return rig.isPresent() && RigFile.read("rig", reader.about().rigText(), reader.about().calibrations()) instanceof Read.Sound<Rig> sound
                && ProgramFile.stored("programme", reader.about().programmeText(), sound) instanceof Read.Sound<Program> program
                ? Optional.of(read(reader, rig.get(), program.value(), open))
                : Optional.empty();
    }

    private static StoredRun read(RunReader reader, Rig rig, Program program, Optional<Account> open) {
        boolean broken = reader.openStep().isPresent();
        EndedSteps ended = new EndedSteps(rig);
        Optional<Trip> trip = Optional.empty();
        try (Cycles cycles = reader.cycles()) {
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                List<StepMark> marks = RunFindings.marks(rig, cycle.events());
                ended.take(cycle.scan(), broken && !cycles.hasNext() ? cut(marks, open) : marks);
                for (StoredEvent event : cycle.events()) {
                    trip = tripped(rig, trip, event);
                }
            }
        }
        return new StoredRun(rig, program, ended.end(), trip);
    }

    /** The last row's marks with the end of the step in which the run was broken off, and the sums that it had until then. */
    private static List<StepMark> cut(List<StepMark> marks, Optional<Account> open) {
        return open.map(account -> Stream.concat(marks.stream(), Stream.<StepMark>of(new StepMark.Over(Ended.CUT, false, account))).toList())
                .orElse(marks);
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
