package rigwarden.findings;

import java.util.List;
import rigwarden.findings.trace.Edge;

/**
 * All that is kept of a run.
 *
 * @param steps that ended, or were broken off with the last row
 * @param edges steps of the current
 * @param rows that were taken
 * @param missingRows scans that never came
 */
public record Gathered(List<StepNotes> steps, List<Edge> edges, long rows, long missingRows) {
    public Gathered {
        steps = List.copyOf(steps);
        edges = List.copyOf(edges);
    }
}
