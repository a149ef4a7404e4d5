package rigwarden.paper;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.findings.Findings;
import rigwarden.findings.Gathered;
import rigwarden.findings.StepFinding;
import rigwarden.findings.StepNotes;
import rigwarden.findings.Trace;
import rigwarden.findings.trace.Recount;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.rig.Rig;
import rigwarden.warden.Scan;

/** The steps of a run, by the very trace that its findings are made of, so that no other number is told of them. */
public final class EndedSteps {
    private final Trace trace;
    private final Recount recount;

    /** Of a run on this rig; its scans come one at a time. */
    public EndedSteps(Rig rig) {
        trace = new Trace(rig);
        recount = new Recount(rig);
    }

    /**
     * What they gave.
     *
     * @param steps in order; a step that was broken off with the last scan ended by that
     * @param untold why the charge of a step cannot be told, by its number; those that can are not among them
     * @param lost why nothing is told of a run with which this one went on, in a sentence; empty where nothing is lost
     */
    public record Told(List<StepFinding> steps, Map<Integer, String> untold, Optional<String> lost) {
        public Told {
            steps = List.copyOf(steps);
            untold = Map.copyOf(untold);
        }

        /** Of a run with which nothing is lost. */
        public Told(List<StepFinding> steps, Map<Integer, String> untold) {
            this(steps, untold, Optional.empty());
        }

        static Told of(Gathered gathered, Optional<String> lost) {
            return new Told(gathered.steps().stream().map(StepNotes::sums).toList(), Findings.untold(gathered), lost);
        }
    }

    /** The next scan, with the steps that ended or began in it. */
    public void take(Scan scan, List<StepMark> marks) {
        Row row = new Row(scan, marks);
        recount.take(row);
        trace.take(row);
    }

    /** No more scans come. A step that still runs is taken as broken off. */
    public Told end() {
        return Told.of(trace.end(recount.account()), Optional.empty());
    }
}
