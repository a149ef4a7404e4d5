package rigwarden.command;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import rigwarden.logbook.StoredProof;
import rigwarden.prove.Outcome;

/**
 * What stands the same in every row of a proof.
 *
 * @param inputs rig file and programme of stops
 * @param made wall-clock label
 * @param who signs it off
 * @param rehearsed whether every part was emulated
 * @param cells what is written on the cells in the rig, from B− to B+; empty where nobody said
 */
record ProofRecord(Inputs inputs, String made, String who, boolean rehearsed, List<String> cells) {
    /** The same with these cells in the rig. */
    ProofRecord with(List<String> inIt) {
        return new ProofRecord(inputs, made, who, rehearsed, inIt);
    }

    /** Whether the rig may be trusted after these: nothing is wrong, and the stops were shown in a run. */
    static boolean holds(List<Outcome> outcomes, OptionalInt run) {
        return run.isPresent() && outcomes.stream().noneMatch(Outcome::spoils);
    }

    /** A row for each outcome, and last the one for the whole. What was left out has none: its earlier date stands. */
    List<StoredProof> rows(List<Outcome> outcomes, OptionalInt run) {
        List<StoredProof> rows = new ArrayList<>();
        for (Outcome one : outcomes) {
            if (one.result() != Outcome.Result.SKIPPED) {
                rows.add(row(one.kind(), one.result() == Outcome.Result.PASSED, one.words(), run));
            }
        }
        long wrong = outcomes.stream().filter(Outcome::spoils).count();
        boolean holds = holds(outcomes, run);
        rows.add(row(StoredProof.WHOLE, holds, holds ? "nothing wrong" : wrong + " wrong or left out", run));
        return rows;
    }

    private StoredProof row(String kind, boolean passed, String words, OptionalInt run) {
        return new StoredProof(inputs.rig().name(), run, kind, passed, made, words, inputs.proved(cells), who, rehearsed);
    }
}
