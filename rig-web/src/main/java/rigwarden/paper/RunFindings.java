package rigwarden.paper;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import rigwarden.elsewhere.LogChannels;
import rigwarden.elsewhere.LogMap;
import rigwarden.elsewhere.MapFile;
import rigwarden.findings.Answer;
import rigwarden.findings.Finding;
import rigwarden.findings.Findings;
import rigwarden.findings.Gathered;
import rigwarden.findings.Headline;
import rigwarden.findings.Kind;
import rigwarden.findings.Rating;
import rigwarden.findings.trace.StepMark;
import rigwarden.joint.JointOhms;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Rig;
import rigwarden.rig.Spot;
import rigwarden.rig.Traced;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/**
 * What can be found from a run file.
 *
 * @param rig it ran on, or the log from elsewhere that it was
 * @param imported where such a log came from
 * @param rehearsal whether every part of it was emulated
 * @param parts the runs that it is made of, in their order: it went on with those before the last
 * @param lost why nothing is found of a run that it went on with, in a sentence; empty where nothing is lost
 * @param rows that were in them
 * @param missingRows scans that were not
 * @param headlines what a person asks of each discharge first
 * @param findings in the order in which they are found
 */
public record RunFindings(Traced rig, Optional<String> imported, boolean rehearsal, List<Part> parts, Optional<String> lost, long rows, long missingRows,
        List<Headline> headlines, List<Finding> findings) {
    public RunFindings {
        parts = List.copyOf(parts);
        headlines = List.copyOf(headlines);
        findings = List.copyOf(findings);
    }

    /**
     * One run of those.
     *
     * @param run its number; 0 of a file that is called otherwise
     * @param scansBefore scans of the parts before it: the scans of a finding are counted on from part to part
     * @param goesOnAtStep step in which the run before was broken off and this one went on, if there is one
     */
    public record Part(int run, long scansBefore, OptionalInt goesOnAtStep) {}

    /** The run that a finding's scan is in. */
    public Part partOf(long scan) {
        return parts.stream().filter(part -> part.scansBefore() < Math.max(1, scan)).reduce((_, last) -> last).orElseThrow();
    }

    /**
     * Reads a run file, one row at a time in memory.
     *
     * @return nothing where this version refuses the rig, or the map, in it
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
            RunAbout about = reader.about();
            return traced(reader).flatMap(traced -> AllParts.read(file, RunFindings::traced).map(all -> {
                List<Finding> found = new ArrayList<>(Findings.of(traced, all.gathered(), Rating.of(traced.cells()),
                        traced instanceof Rig rig ? WalkedBars.of(rig, walked) : List.of()));
                earlier.ifPresent(other -> found.add(beside(traced, all, other)));
                return of(traced, about, all, found);
            }));
        }
    }

    /** What was found of all parts of a run. */
    static RunFindings of(Traced traced, RunAbout about, AllParts all, List<Finding> found) {
        Gathered gathered = all.gathered();
        return new RunFindings(traced, about.imported(), about.rehearsal(), all.parts(), all.lost(), gathered.rows(), gathered.missingRows(),
                Findings.headlines(traced, gathered, Rating.of(traced.cells()), found), found);
    }

    private static Optional<Traced> traced(RunReader reader) {
        return reader.about().imported().isPresent() ? log(reader) : rig(reader).map(Traced.class::cast);
    }

    private static Finding beside(Traced now, AllParts all, Path earlier) {
        String called = "run " + earlier.getFileName().toString().replaceFirst("[.]db$", "").replaceFirst("^0+", "");
        try (RunReader reader = RunReader.open(earlier)) {
            return rig(reader).filter(other -> other.name().equals(now.name()))
                    .flatMap(_ -> AllParts.read(earlier, RunFindings::rig))
                    .map(other -> Collections.disjoint(all.numbers(), other.numbers()) ? Findings.beside(other.gathered(), called, all.gathered())
                            : notBeside(called, called + " and this run are parts of one: its joints would be held against themselves"))
                    .orElseGet(() -> notBeside(called, called + " is of a rig of another name, or of one that this version refuses"));
        }
    }

    private static Finding notBeside(String called, String why) {
        return new Finding(Kind.SQUARE, called + " to this run", new Answer.Refused(why), List.of(), List.of(), 0, 0);
    }

    /** The rig that a run's readings are of, with the channels that they were recorded with; nothing where this version refuses it. */
    public static Optional<Rig> rig(RunReader reader) {
        return RigFile.read("rig", reader.about().rigText(), reader.about().calibrations()) instanceof Read.Sound<Rig> read
                && read.value().channels().size() == reader.channels().size()
                ? Optional.of(read.value().with(reader.channels()))
                : Optional.empty();
    }

    /** The map says more of the channels than the file's table of them: their smallest steps. */
    private static Optional<Traced> log(RunReader reader) {
        if (MapFile.read("map", reader.about().rigText()) instanceof Read.Sound<LogMap> map) {
            ForeignLog log = LogChannels.of(map.value(), reader.channels().getFirst().periodNanos());
            return log.channels().equals(reader.channels()) ? Optional.of(log) : Optional.empty();
        }
        return Optional.empty();
    }

    static List<StepMark> marks(Traced from, List<StoredEvent> events) {
        if (events.isEmpty()) {
            return List.of();
        }
        List<StepMark> marks = new ArrayList<>();
        for (StoredEvent event : events) {
            switch (event.kind()) {
                case "step_begun" -> marks.add(new StepMark.Begun(event.step().orElseThrow(), event.words()));
                case "step_ended" -> marks.add(new StepMark.Over(event.ended().orElseThrow(), event.settled().orElse(false),
                        event.account().orElseThrow()));
                case "spot" -> {
                    if (from instanceof Rig rig) {
                        Spot.named(rig, event.words()).map(StepMark.Laid::new).ifPresent(marks::add);
                    }
                }
                case String _ -> { }
            }
        }
        return marks;
    }
}
