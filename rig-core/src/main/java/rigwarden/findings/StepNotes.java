package rigwarden.findings;

import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Continuity;
import rigwarden.findings.trace.Knees;
import rigwarden.findings.trace.RestTrail;
import rigwarden.findings.trace.Warmth;

/**
 * What is kept of one step.
 *
 * @param sums charge, energy and extremes
 * @param continuity whether it was seen in one piece
 * @param knees charge at which each cell crossed which voltage
 * @param warmth temperatures over the step
 * @param rest voltages hour by hour
 * @param busWattHours energy at the bus, Wh, positive into the cells; NaN where the bus was not read throughout
 * @param meanRoomCelsius mean of the room's probe; NaN where it was never read
 * @param zero of the current, where the contactor was seen open before and after
 */
public record StepNotes(StepFinding sums, Continuity continuity, Knees knees, List<Warmth> warmth, RestTrail rest,
        double busWattHours, double meanRoomCelsius, Optional<Zero> zero) {
    /** The same step with sums that know more of the current's zero. */
    StepNotes with(StepFinding better, Optional<Zero> around) {
        return new StepNotes(better, continuity, knees, warmth, rest, busWattHours, meanRoomCelsius, around);
    }
}
