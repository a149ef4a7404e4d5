package rigwarden.findings;

import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Continuity;
import rigwarden.findings.trace.DeviceSum;
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
 * @param device what the working devices' own meters say of the charge; nothing where none has one
 * @param curves charge by voltage of each cell; none where its taps are too coarse for that
 */
public record StepNotes(StepFinding sums, Continuity continuity, Knees knees, List<Warmth> warmth, RestTrail rest,
        double busWattHours, double meanRoomCelsius, Optional<Zero> zero, Optional<DeviceSum> device, List<CellCurve> curves) {
    public StepNotes {
        curves = List.copyOf(curves);
    }

    /** Of a step whose devices have no meters, and whose zero nobody saw. */
    public StepNotes(StepFinding sums, Continuity continuity, Knees knees, List<Warmth> warmth, RestTrail rest, double busWattHours,
            double meanRoomCelsius) {
        this(sums, continuity, knees, warmth, rest, busWattHours, meanRoomCelsius, Optional.empty(), Optional.empty(), List.of());
    }

    /** The same step with so many scans counted before it. */
    StepNotes counted(long scansBefore) {
        return new StepNotes(sums, continuity.counted(scansBefore), knees, warmth, rest, busWattHours, meanRoomCelsius, zero, device, curves);
    }

    /** The same step with sums that know more of the current's zero. */
    StepNotes with(StepFinding better, Optional<Zero> around) {
        return new StepNotes(better, continuity, knees, warmth, rest, busWattHours, meanRoomCelsius, around, device, curves);
    }
}
