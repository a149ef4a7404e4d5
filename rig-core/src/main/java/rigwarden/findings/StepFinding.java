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
 * @param flowSeconds of these under current: a step may wait for the cells' temperature first, and a charger or a heater may pause in it
 * @param chargeAmpHours by the sensor's accumulator and the learnt clock ratio, Ah, positive into the cells; by the
 *     host's own samples where the sensor has none
 * @param chargeBudget what its uncertainty is made of, Ah
 * @param trapezoidAmpHours the same by the host's own samples, Ah: a check where there is an accumulator
 * @param energyWattHours at the cells' studs, Wh, positive into the cells
 * @param lowest lowest cell voltage and where
 * @param highest highest cell voltage and where
 * @param hottest hottest probe and where
 * @param meanBodyCelsius mean temperature of the cells' bodies under the current, or over a step without any, °C; NaN where none was read
 * @param startAmps current after its first minute, A; signed
 * @param endVoltsPerSecond slope of the lowest cell at the end, while the current still flowed, V/s
 * @param by what ended it
 * @param settled for a rest, whether the cells were settled
 * @param breaks where it was broken off and went on; none of a step in one piece
 */
public record StepFinding(
        int index,
        String kind,
        double seconds,
        double flowSeconds,
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

    /** A step in one piece, in which current flowed all the time. */
    public StepFinding(int index, String kind, double seconds, Uncertain chargeAmpHours, Budget chargeBudget,
            double trapezoidAmpHours, Uncertain energyWattHours, Extreme lowest, Extreme highest, Extreme hottest,
            double meanBodyCelsius, double startAmps, double endVoltsPerSecond, Ended by, boolean settled) {
        this(index, kind, seconds, seconds, chargeAmpHours, chargeBudget, trapezoidAmpHours, energyWattHours, lowest, highest, hottest,
                meanBodyCelsius, startAmps, endVoltsPerSecond, by, settled, List.of());
    }

    /** The same step, broken off and gone on so. */
    StepFinding broken(List<Break> so) {
        return new StepFinding(index, kind, seconds, flowSeconds, chargeAmpHours, chargeBudget, trapezoidAmpHours, energyWattHours, lowest, highest, hottest,
                meanBodyCelsius, startAmps, endVoltsPerSecond, by, settled, so);
    }

    /** Time under current; of a step in which none ever flowed all of it, s. */
    double actingSeconds() {
        return flowSeconds > 0 ? flowSeconds : seconds;
    }

    /** Mean current over that time, A, positive into the cells. */
    double meanAmps() {
        return actingSeconds() == 0 ? 0 : chargeAmpHours.value() / (actingSeconds() / 3600);
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
