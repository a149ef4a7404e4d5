package rigwarden.paper;

import java.util.List;
import java.util.Map;
import rigwarden.findings.Findings;
import rigwarden.findings.Gathered;
import rigwarden.findings.StepFinding;
import rigwarden.findings.StepNotes;
import rigwarden.findings.Trace;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.rig.Rig;
import rigwarden.warden.Scan;

/** The steps of a run that have ended, by the very trace that its findings are made of, so that no other number is told of them. */
public final class EndedSteps {
    private final Trace trace;
    private int ended;

    /** Of a run on this rig; its scans come one at a time. */
    public EndedSteps(Rig rig) {
        trace = new Trace(rig);
    }

    /**
     * What they gave.
     *
     * @param steps in order
     * @param untold why the charge of a step cannot be told, by its number; those that can are not among them
     */
    public record Told(List<StepFinding> steps, Map<Integer, String> untold) {
        public Told {
            steps = List.copyOf(steps);
            untold = Map.copyOf(untold);
        }
    }

    /** The next scan, with the steps that ended or began in it. */
    public void take(Scan scan, List<StepMark> marks) {
        ended += Math.toIntExact(marks.stream().filter(StepMark.Over.class::isInstance).count());
        trace.take(new Row(scan, marks));
    }

    /** No more scans come. A step that still runs is not among them. */
    public Told end() {
        Gathered gathered = trace.end();
        List<StepNotes> over = gathered.steps().subList(0, Math.min(ended, gathered.steps().size()));
        return new Told(over.stream().map(StepNotes::sums).toList(), Findings.untold(gathered));
    }
}
