package rigwarden.logbook;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A run as the ledger lists it.
 *
 * @param number from 1, never used twice
 * @param file name of its file in the folder {@code runs}
 * @param rig name of the rig
 * @param programme name of the programme
 * @param started wall-clock label
 * @param outcome how it stands
 * @param words last words on it; empty while it runs
 * @param sha256 of its closed file, hexadecimal
 * @param continues number of the broken-off run that it goes on with
 * @param abandoned why nobody is to be asked about it any more
 */
public record LedgerRun(
        int number,
        String file,
        String rig,
        String programme,
        String started,
        Outcome outcome,
        String words,
        Optional<String> sha256,
        OptionalInt continues,
        Optional<String> abandoned) {
    /** A run that continues none, of which nothing was decided. */
    public LedgerRun(int number, String file, String rig, String programme, String started, Outcome outcome, String words,
            Optional<String> sha256) {
        this(number, file, rig, programme, started, outcome, words, sha256, OptionalInt.empty(), Optional.empty());
    }

    /** What was decided about it, if it is one that can be decided about: continued or abandoned. */
    public Optional<String> decided(List<LedgerRun> runs) {
        return abandoned.map(why -> "abandoned: " + why).or(() -> runs.stream()
                .filter(run -> run.continues().equals(OptionalInt.of(number)))
                .findFirst()
                .map(run -> String.format(Locale.ROOT, "continued as run %04d", run.number())));
    }

    /** Whether a person may still decide that it goes on or is abandoned. */
    public boolean undecided(List<LedgerRun> runs) {
        return (outcome == Outcome.INTERRUPTED || outcome == Outcome.TRIPPED) && decided(runs).isEmpty();
    }
}
