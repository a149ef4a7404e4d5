package rigwarden.findings.trace;

import rigwarden.program.Ended;
import rigwarden.run.Account;

/** That a step began or ended in a scan. */
public sealed interface StepMark {
    /** Step {@code number} of the programme, from 1, began; {@code kind} is its word. */
    record Begun(int number, String kind) implements StepMark {}

    /** The step that began last ended, with the run machine's own sums. */
    record Over(Ended by, boolean settled, Account account) implements StepMark {}
}
