package rigwarden.live;

import java.util.Optional;
import rigwarden.program.Ended;

/**
 * What the run does now.
 *
 * @param phase what it is about
 * @param step number of the step, from 1; 0 before the first
 * @param kind word for the step's kind; empty before the first
 * @param stepNanos when that step began, monotonic
 * @param setAmps current that is ordered, A, positive into the cells; 0 without an order
 * @param by what ended the programme, when it is over
 */
public record Doing(Phase phase, int step, String kind, long stepNanos, double setAmps, Optional<Ended> by) {
    static final Doing NOTHING = new Doing(Phase.IDLE, 0, "", 0, 0, Optional.empty());
}
