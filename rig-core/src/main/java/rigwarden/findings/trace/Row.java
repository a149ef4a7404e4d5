package rigwarden.findings.trace;

import java.util.List;
import rigwarden.warden.Scan;

/**
 * One row of a trace.
 *
 * @param scan its number orders the rows
 * @param marks steps that ended or began in it, in that order, and where the loose probe was laid
 */
public record Row(Scan scan, List<StepMark> marks) {
    public Row {
        marks = List.copyOf(marks);
    }
}
