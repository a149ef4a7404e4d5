package rigwarden.findings.trace;

import rigwarden.program.Ended;
import rigwarden.rig.Spot;
import rigwarden.run.Account;

/** That a step began or ended in a scan, or that the loose probe was laid elsewhere. */
public sealed interface StepMark {
    /** Step {@code number} of the programme, from 1, began; {@code kind} is its word. */
    record Begun(int number, String kind) implements StepMark {}

    /** The step that began last ended, with the run machine's own sums. */
    record Over(Ended by, boolean settled, Account account) implements StepMark {}

    /** Somebody said that the loose probe lies on this spot. */
    record Laid(Spot spot) implements StepMark {}
}
