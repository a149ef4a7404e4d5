package rigwarden.live;

import java.util.List;
import rigwarden.findings.StepFinding;
import rigwarden.program.Program;
import rigwarden.rig.Rig;

/** How long a programme takes, about, before anything of it is known. */
public final class Plan {
    private Plan() {}

    /** Hours of the whole programme, by its own currents and the rating; the cells are taken for half full. */
    public static double hours(Rig rig, Program program) {
        return Outlook.hours(program, 0, Level.unknown(rig.cells().ratedAmpHours())).stream()
                .mapToDouble(Double::doubleValue).sum();
    }

    /** How the cells are left by steps that have ended, as far as these show it. */
    public static Left left(Rig rig, Program program, List<StepFinding> ended) {
        Level level = Level.unknown(rig.cells().ratedAmpHours());
        for (StepFinding step : ended) {
            level = level.stepBegun().flowed(step.chargeAmpHours().value())
                    .stepEnded(program.steps().get(step.index() - 1), step.by());
        }
        return Outlook.stands(level);
    }
}
