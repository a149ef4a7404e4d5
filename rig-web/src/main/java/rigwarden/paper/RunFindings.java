package rigwarden.paper;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.Answer;
import rigwarden.findings.Finding;
import rigwarden.findings.Findings;
import rigwarden.findings.Gathered;
import rigwarden.findings.Kind;
import rigwarden.findings.Rating;
import rigwarden.findings.Trace;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.joint.JointOhms;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.rig.Rig;
import rigwarden.rig.Spot;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/**
 * What can be found from a run file.
 *
 * @param rig it ran on
 * @param rehearsal whether every part of it was emulated
 * @param part whether it went on with another run, of which nothing is found here
 * @param rows that were in it
 * @param missingRows scans that were not
 * @param findings in the order in which they are found
 */
public record RunFindings(Rig rig, boolean rehearsal, boolean part, long rows, long missingRows, List<Finding> findings) {
    /**
     * Reads a run file, one row at a time in memory.
     *
     * @return nothing where this version refuses the rig in it
     * @throws LogbookException where the file is missing or cannot be read
     */
    public static Optional<RunFindings> read(Path file) {
        return read(file, List.of(), Optional.empty());
    }

    /**
     * The same, with what else is known.
     *
     * @param walked what a hand meter found on its joints, by the names of the walk
     * @param earlier a run file of the same rig to which its joints' warmth is compared
     */
    public static Optional<RunFindings> read(Path file, List<JointOhms> walked, Optional<Path> earlier) {
        try (RunReader reader = RunReader.open(file)) {
            return rig(reader).map(rig -> {
                Gathered gathered = gather(reader, rig);
                List<Finding> found = new ArrayList<>(Findings.of(rig, gathered, Rating.usual(rig.cells().ratedAmpHours()),
                        WalkedBars.of(rig, walked)));
                earlier.ifPresent(other -> found.add(beside(rig, gathered, other)));
                return new RunFindings(rig, reader.about().rehearsal(), reader.about().from().isPresent(), gathered.rows(),
                        gathered.missingRows(), List.copyOf(found));
            });
        }
    }

    private static Finding beside(Rig rig, Gathered now, Path earlier) {
        String called = "run " + earlier.getFileName().toString().replaceFirst("[.]db$", "").replaceFirst("^0+", "");
        try (RunReader reader = RunReader.open(earlier)) {
            return rig(reader).filter(other -> other.name().equals(rig.name()))
                    .map(other -> Findings.beside(gather(reader, other), called, now))
                    .orElseGet(() -> new Finding(Kind.SQUARE, called + " to this run",
                            new Answer.Refused(called + " is of a rig of another name, or of one that this version refuses"), List.of(), List.of(), 0, 0));
        }
    }

    /** The rig that a run's readings are of, with the channels that they were recorded with; nothing where this version refuses it. */
    public static Optional<Rig> rig(RunReader reader) {
        return RigFile.read("rig", reader.about().rigText(), reader.about().calibrations()) instanceof Read.Sound<Rig> read
                && read.value().channels().size() == reader.channels().size()
                ? Optional.of(read.value().with(reader.channels()))
                : Optional.empty();
    }

    static Gathered gather(RunReader reader, Rig rig) {
        Trace trace = new Trace(rig);
        try (Cycles cycles = reader.cycles()) {
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                trace.take(new Row(cycle.scan(), marks(rig, cycle.events())));
            }
        }
        return trace.end();
    }

    static List<StepMark> marks(Rig rig, List<StoredEvent> events) {
        if (events.isEmpty()) {
            return List.of();
        }
        List<StepMark> marks = new ArrayList<>();
        for (StoredEvent event : events) {
            switch (event.kind()) {
                case "step_begun" -> marks.add(new StepMark.Begun(event.step().orElseThrow(), event.words()));
                case "step_ended" -> marks.add(new StepMark.Over(event.ended().orElseThrow(), event.settled().orElse(false),
                        event.account().orElseThrow()));
                case "spot" -> Spot.named(rig, event.words()).map(StepMark.Laid::new).ifPresent(marks::add);
                case String _ -> { }
            }
        }
        return marks;
    }
}
