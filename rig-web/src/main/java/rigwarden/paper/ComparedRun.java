package rigwarden.paper;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.Comparison;
import rigwarden.findings.Measured;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.RunReader;

/**
 * What a run brings to a comparison.
 *
 * @param number of the run
 * @param started label of its beginning
 * @param rehearsal whether every part of it was emulated
 * @param seed of a rehearsal's specimen; 0 of a real run
 * @param mishaps what was to go wrong in a rehearsal
 * @param parts numbers of the runs that it is made of: it went on with those before the last
 * @param lost why nothing is known of a run with which it went on, in a sentence; empty where nothing is lost
 * @param measured what can be held against another
 */
public record ComparedRun(int number, String started, boolean rehearsal, long seed, List<String> mishaps, List<Integer> parts,
        Optional<String> lost, Measured measured) {
    public ComparedRun {
        mishaps = List.copyOf(mishaps);
        parts = List.copyOf(parts);
    }

    /**
     * Reads a run with all that it went on with, one row at a time in memory.
     *
     * @return nothing where this version refuses the rig in it
     * @throws LogbookException where the file is missing or cannot be read
     */
    public static Optional<ComparedRun> read(int number, Path file) {
        try (RunReader reader = RunReader.open(file)) {
            return RunFindings.rig(reader).flatMap(rig -> AllParts.read(file, RunFindings::rig).map(all -> new ComparedRun(number,
                    reader.about().started(), reader.about().rehearsal(), reader.about().seed(), reader.about().mishaps(), all.numbers(), all.lost(),
                    Measured.of(rig, all.gathered()))));
        }
    }

    /** Why a later run is not of the same pack; empty when it may be. */
    public Optional<String> stranger(ComparedRun later) {
        if (number == later.number) {
            return Optional.of("run " + number + " is named twice: a run has no difference from itself");
        }
        if (!Collections.disjoint(parts, later.parts)) {
            return Optional.of(Spots.say("run %d went on with run %d: what was measured before the break would be held against itself",
                    Math.max(number, later.number), Math.min(number, later.number)));
        }
        if (rehearsal != later.rehearsal) {
            return Optional.of(Spots.say("run %d is a rehearsal and run %d is not: one is of emulated cells", rehearsal ? number : later.number,
                    rehearsal ? later.number : number));
        }
        return Comparison.strangers(measured.rig(), later.measured.rig())
                .map(words -> Spots.say("of runs %d and %d ", number, later.number) + words)
                .or(() -> seed == later.seed ? Optional.empty() : Optional.of(Spots.say(
                        "run %d rehearsed specimen %d and run %d specimen %d: two packs", number, seed, later.number, later.seed)));
    }

    /** How a person knows it. */
    String words() {
        return Spots.say("run %04d (%s)", number, rehearsal ? mishaps.isEmpty() ? "rehearsal" : "rehearsal, " + String.join(", ", mishaps) : started);
    }
}
