package rigwarden.findings;

import java.util.List;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;

/**
 * What one step gave.
 *
 * @param index number in the programme, from 1
 * @param kind its word
 * @param seconds from its beginning to open contacts
 * @param chargeAmpHours by the sensor's accumulator and the learnt clock ratio, Ah, positive into the cells; by the
 *     host's own samples where the sensor has none
 * @param chargeBudget what its uncertainty is made of, Ah
 * @param trapezoidAmpHours the same by the host's own samples, Ah: a check where there is an accumulator
 * @param energyWattHours at the cells' studs, Wh, positive into the cells
 * @param lowest lowest cell voltage and where
 * @param highest highest cell voltage and where
 * @param hottest hottest probe and where
 * @param meanBodyCelsius mean temperature of the cells' bodies over the step, °C; NaN where none was read
 * @param startAmps current after a minute, A; signed
 * @param endVoltsPerSecond slope of the lowest cell at the end, while the current still flowed, V/s
 * @param by what ended it
 * @param settled for a rest, whether the cells were settled
 * @param breaks where it was broken off and went on; none of a step in one piece
 */
public record StepFinding(
        int index,
        String kind,
        double seconds,
        Uncertain chargeAmpHours,
        Budget chargeBudget,
        double trapezoidAmpHours,
        Uncertain energyWattHours,
        Extreme lowest,
        Extreme highest,
        Extreme hottest,
        double meanBodyCelsius,
        double startAmps,
        double endVoltsPerSecond,
        Ended by,
        boolean settled,
        List<Break> breaks) {
    public StepFinding {
        breaks = List.copyOf(breaks);
    }

    /** A step in one piece. */
    public StepFinding(int index, String kind, double seconds, Uncertain chargeAmpHours, Budget chargeBudget,
            double trapezoidAmpHours, Uncertain energyWattHours, Extreme lowest, Extreme highest, Extreme hottest,
            double meanBodyCelsius, double startAmps, double endVoltsPerSecond, Ended by, boolean settled) {
        this(index, kind, seconds, chargeAmpHours, chargeBudget, trapezoidAmpHours, energyWattHours, lowest, highest, hottest,
                meanBodyCelsius, startAmps, endVoltsPerSecond, by, settled, List.of());
    }

    /** The same step, broken off and gone on so. */
    StepFinding broken(List<Break> so) {
        return new StepFinding(index, kind, seconds, chargeAmpHours, chargeBudget, trapezoidAmpHours, energyWattHours, lowest, highest, hottest,
                meanBodyCelsius, startAmps, endVoltsPerSecond, by, settled, so);
    }

    /** How long it was broken off in all, s. */
    double outageSeconds() {
        return breaks.stream().mapToDouble(Break::outageSeconds).sum();
    }

    /** What was put into the charge for what may have flowed unseen at its breaks, Ah, magnitude; nothing where the part before a break is lost. */
    double unseenAmpHours() {
        return chargeBudget.terms().stream().filter(term -> term.name().equals(Break.UNSEEN)).mapToDouble(Budget.Term::halfWidth).sum();
    }

    /** A value and the column that had it. */
    public record Extreme(double value, String where) {}
}
