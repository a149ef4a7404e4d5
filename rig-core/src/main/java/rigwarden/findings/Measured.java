package rigwarden.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Edge;
import rigwarden.rig.Rig;

/**
 * What one run measured that a later one can be held against.
 *
 * @param rig it ran on, with its calibrations
 * @param discharges whose charge can be told
 * @param resistances at the end of each discharge, after the longest delay that was caught
 * @param onTheFlat resistance between the taps of each cell where all are on their flat; empty where the current never stopped there
 */
public record Measured(Rig rig, List<Discharge> discharges, List<Placed> resistances, List<Resistance> onTheFlat) {
    public Measured {
        discharges = List.copyOf(discharges);
        resistances = List.copyOf(resistances);
        onTheFlat = List.copyOf(onTheFlat);
    }

    /**
     * A discharge that gave a capacity.
     *
     * @param capacity that came of it
     * @param kind word of the step
     * @param lowest voltage at its end and the column that had it
     * @param stoodDays how long the cells rested between the charge before and it
     */
    record Discharge(Capacity capacity, String kind, StepFinding.Extreme lowest, double stoodDays) {
        /** As if they had stood for so long. */
        Discharge stood(double days) {
            return new Discharge(capacity, kind, lowest, days);
        }
    }

    /**
     * A resistance with what it hangs on.
     *
     * @param resistance of one cell
     * @param kind word of the step that ended there
     * @param celsius mean of the bodies over that step
     * @param restVolts voltage of the cell after the delay: how full it was left
     */
    record Placed(Resistance resistance, String kind, double celsius, double restVolts) {}

    /** Of a run whose rows were fed to a {@link Trace} of the same rig. */
    public static Measured of(Rig rig, Gathered run) {
        List<StepFinding> sums = run.steps().stream().map(StepNotes::sums).toList();
        List<Discharge> discharges = new ArrayList<>();
        for (Capacity capacity : Capacity.of(rig, sums)) {
            StepNotes step = run.steps().stream().filter(s -> s.sums().index() == capacity.step()).findFirst().orElseThrow();
            if (Charge.refusal(step).isEmpty()) {
                discharges.add(new Discharge(capacity, step.sums().kind(), step.sums().lowest(), stoodDays(sums, step.sums())));
            }
        }
        List<Placed> placed = new ArrayList<>();
        for (StepFinding step : sums) {
            if (step.kind().equals("discharge") || step.kind().equals("heat_run")) {
                run.edges().stream().filter(e -> e.step() == step.index() && e.opened()).reduce((_, last) -> last)
                        .ifPresent(edge -> placed.addAll(placed(rig, step, edge)));
            }
        }
        return new Measured(rig, discharges, placed, Joints.onTheFlat(rig, run.edges()));
    }

    private static double stoodDays(List<StepFinding> steps, StepFinding discharge) {
        double seconds = 0;
        for (StepFinding step : steps.subList(0, steps.indexOf(discharge)).reversed()) {
            if (!step.kind().equals("rest")) {
                break;
            }
            seconds += step.seconds();
        }
        return seconds / 86_400;
    }

    private static List<Placed> placed(Rig rig, StepFinding step, Edge edge) {
        List<Resistance> all = Resistance.atOpening(rig, edge);
        Optional<Double> longest = all.stream().map(Resistance::seconds).max(Comparator.naturalOrder());
        double[] after = edge.after().getLast().volts();
        return all.stream().filter(r -> longest.equals(Optional.of(r.seconds())))
                .map(r -> new Placed(r, step.kind(), step.meanBodyCelsius(), after[r.cell() - 1])).toList();
    }
}
