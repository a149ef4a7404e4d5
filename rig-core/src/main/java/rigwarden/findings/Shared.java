package rigwarden.findings;

import java.util.Set;
import rigwarden.rig.Calibratable;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Rig;

/**
 * Which instruments two runs have in common. What the same shunt, chip and calibration err by is the same in both runs, and falls out of
 * their difference; all else is taken as independent, which makes a difference less sure and never surer.
 *
 * @param current whether shunt, chip and calibration of the current are the same
 * @param taps whether inputs and calibrations of the voltages are the same
 */
record Shared(boolean current, boolean taps) {
    static Shared of(Rig earlier, Rig later) {
        boolean shunt = Calibratable.of(earlier).get(Calibratable.CURRENT).equals(Calibratable.of(later).get(Calibratable.CURRENT))
                && earlier.shunt().equals(later.shunt());
        return new Shared(shunt && earlier.calibration(Calibratable.CURRENT).equals(later.calibration(Calibratable.CURRENT)),
                earlier.inputs().equals(later.inputs()) && others(earlier).equals(others(later)));
    }

    private static Set<ChannelCalibration> others(Rig rig) {
        return Set.copyOf(rig.calibrations().stream().filter(c -> !c.channel().equals(Calibratable.CURRENT)).toList());
    }

    /** Whether a term of a budget is the same error in both runs. */
    boolean alike(Budget.Term term) {
        return switch (term.nature()) {
            case GAIN, OFFSET -> current;
            case TAPS -> taps;
            case WARMTH, CLOCK, WANDERING, OWN -> false;
        };
    }

    /** The same where the cells at the cut-off are two: each has a tap of its own. */
    Shared ofTwoCells() {
        return new Shared(current, false);
    }
}
