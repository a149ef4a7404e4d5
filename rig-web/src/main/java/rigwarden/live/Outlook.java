package rigwarden.live;

import java.util.ArrayList;
import java.util.List;
import rigwarden.program.Program;
import rigwarden.program.Step;

/** Looks ahead over a programme: how long each step takes, about, and how it leaves the cells. */
final class Outlook {
    /** Time in which the current falls to its taper after a charge at 0.2 C, h: an assumption for the strip only. */
    private static final double TAPER_HOURS = 0.4;
    private static final double LEAST_AMPS = 0.01;

    private Outlook() {}

    /** Hours that a step takes from a level on. */
    static double hours(Step step, Level from) {
        return switch (step) {
            case Step.Charge s -> from.toFull() / Math.max(s.amps(), LEAST_AMPS) + TAPER_HOURS;
            case Step.Discharge s -> from.toEmpty() / Math.max(s.amps(), LEAST_AMPS);
            case Step.HeatRun s -> Math.min(from.toEmpty() / Math.max(s.amps(), LEAST_AMPS), s.atMostNanos() / 3600e9);
            case Step.Pulse s -> (s.baseNanos() + s.pulseNanos()) / 3600e9;
            case Step.Balance s -> from.toFull() / Math.max(s.amps(), LEAST_AMPS) + s.holdNanos() / 3600e9;
            case Step.ProveProtection s ->
                0.1 * from.capacityAmpHours() / Math.max(s.amps(), LEAST_AMPS);
            case Step.Recover s -> 0.02 * from.capacityAmpHours() / Math.max(s.amps(), LEAST_AMPS);
            case Step.ProveStop _ -> 0.01;
            case Step.Rest s -> s.atLeastNanos() / 3600e9;
            case Step.Park s -> s.share() * from.capacityAmpHours() / Math.max(s.amps(), LEAST_AMPS);
        };
    }

    /** Level behind a step that ends as it is meant to. */
    static Level after(Step step, Level from) {
        return switch (step) {
            case Step.Charge _ -> from.at(1);
            case Step.Balance _ -> from.at(1);
            case Step.Discharge _ -> from.at(0);
            case Step.HeatRun s -> {
                double taken = s.amps() * s.atMostNanos() / 3600e9;
                yield taken < from.toEmpty() ? from.flowed(-taken) : from.at(0);
            }
            case Step.Rest _, Step.Pulse _, Step.ProveProtection _, Step.Recover _, Step.ProveStop _ -> from;
            case Step.Park s -> from.at(s.share());
        };
    }

    /** Hours of every step from the given one (index from 0) to the last. */
    static List<Double> hours(Program program, int first, Level from) {
        List<Double> hours = new ArrayList<>();
        Level level = from;
        for (Step step : program.steps().subList(first, program.steps().size())) {
            hours.add(hours(step, level));
            level = after(step, level);
        }
        return hours;
    }

    /** In what state the cells will be left if the programme runs to its end from this step (index from 0). */
    static Left left(Program program, int first, Level from) {
        Level level = from;
        for (Step step : program.steps().subList(Math.min(first, program.steps().size()), program.steps().size())) {
            level = after(step, level);
        }
        if (!level.known()) {
            return new Left("as they are: this run has not shown how full they are", Left.Care.NONE);
        }
        return Left.at(level.share());
    }

    /** How the cells stand after a run that is over. */
    static Left stands(Level level) {
        return level.known()
                ? Left.at(level.share())
                : new Left("nobody knows how full: this run has shown them neither full nor empty", Left.Care.LOOK);
    }
}
