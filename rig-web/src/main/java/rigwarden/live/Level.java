package rigwarden.live;

import java.util.Optional;
import rigwarden.findings.Reversible;
import rigwarden.program.Ended;
import rigwarden.program.Step;

/**
 * How full the cells are, as far as this run itself has shown it: nothing is known before the first full or empty end.
 *
 * @param known whether a step has ended full, or at the cut-off
 * @param missingAmpHours charge below full, Ah; meaningful when known
 * @param capacityAmpHours measured from full to the cut-off, or the rating before that, Ah
 * @param measured whether the capacity was measured in this run
 * @param stepAmpHours net charge of the running step, Ah, positive into the cells
 */
record Level(
        boolean known, double missingAmpHours, double capacityAmpHours, boolean measured, double stepAmpHours) {

    /** What a charge that ended before its taper leaves missing, as a share: for the outlook only. */
    private static final double NEARLY = 0.01;

    static Level unknown(double ratedAmpHours) {
        return new Level(false, 0, ratedAmpHours, false, 0);
    }

    Level flowed(double ampHours) {
        return new Level(known, missingAmpHours - ampHours, capacityAmpHours, measured, stepAmpHours + ampHours);
    }

    Level stepBegun() {
        return new Level(known, missingAmpHours, capacityAmpHours, measured, 0);
    }

    /** What an end says of the cells: a charge at its taper is full, a discharge at its cut-off empty, others say what was counted. */
    Level stepEnded(Step step, Ended by) {
        return switch (by) {
            case TAPER -> new Level(true, 0, capacityAmpHours, measured, stepAmpHours);
            case CUT_OFF -> step instanceof Step.Discharge || step instanceof Step.HeatRun ? emptied() : this;
            case CEILING -> step instanceof Step.Charge
                    ? new Level(true, NEARLY * capacityAmpHours, capacityAmpHours, measured, stepAmpHours) : this;
            case CHARGER, SINK, PROTECTION, SETTLED, PROVED, TIME, CHARGE_REACHED, NEVER_FIT, NOT_CONTINUED, CUT, TRIPPED, STOPPED -> this;
        };
    }

    private Level emptied() {
        double capacity = known ? missingAmpHours : capacityAmpHours;
        return new Level(true, capacity, capacity, known, stepAmpHours);
    }

    /** Charge in the cells as a share of the capacity, 0…1; ask {@link #known} first. */
    double share() {
        return Math.clamp(1 - missingAmpHours / capacityAmpHours, 0, 1);
    }

    /** The heat that comes with the state of charge from the beginning of the running step on; none where that was not known. */
    Optional<Reversible> reversible() {
        return known ? Optional.of(new Reversible(1 - (missingAmpHours + stepAmpHours) / capacityAmpHours, capacityAmpHours)) : Optional.empty();
    }

    /** Charge that a full charge still needs, Ah; half the capacity where nothing is known. */
    double toFull() {
        return known ? Math.max(0, missingAmpHours) : Math.max(0, capacityAmpHours / 2 - stepAmpHours);
    }

    /** Charge that a discharge still gives, Ah; the whole capacity where nothing is known. */
    double toEmpty() {
        return known ? Math.max(0, capacityAmpHours - missingAmpHours) : Math.max(0, capacityAmpHours + stepAmpHours);
    }

    /** The same at a share of the capacity, for a look ahead. */
    Level at(double share) {
        return new Level(true, (1 - share) * capacityAmpHours, capacityAmpHours, measured, 0);
    }
}
