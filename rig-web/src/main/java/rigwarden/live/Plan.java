package rigwarden.live;

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
}
