package rigwarden.findings;

import java.util.List;
import rigwarden.findings.trace.Edge;
import rigwarden.findings.trace.Visit;

/**
 * All that is kept of a run.
 *
 * @param steps that ended, or were broken off with the last row
 * @param edges steps of the current
 * @param rows that were taken
 * @param missingRows scans that never came
 * @param visits what the loose probe showed, by spot, in the order of the stays
 * @param droppedEdges steps of the current that were seen and not kept, since a step of the programme had so many
 */
public record Gathered(List<StepNotes> steps, List<Edge> edges, long rows, long missingRows, List<Visit> visits,
        long droppedEdges) {
    public Gathered {
        steps = List.copyOf(steps);
        edges = List.copyOf(edges);
        visits = List.copyOf(visits);
    }

    /**
     * Of a run that went on with another: with its scans counted on from that one's, and the loose probe without a zero, since such a run
     * begins with what the other had warmed.
     */
    Gathered goneOn(long scansBefore) {
        return new Gathered(steps.stream().map(step -> step.counted(scansBefore)).toList(), edges.stream().map(e -> e.counted(scansBefore)).toList(),
                rows, missingRows, visits.stream().map(visit -> visit.goneOn(scansBefore)).toList(), droppedEdges);
    }

    /** Scans that were counted in it, those that never came among them. */
    public long scans() {
        return rows + missingRows;
    }

    /** Of a run without a loose probe. */
    public Gathered(List<StepNotes> steps, List<Edge> edges, long rows, long missingRows) {
        this(steps, edges, rows, missingRows, List.of(), 0);
    }
}
