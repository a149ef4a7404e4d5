package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import rigwarden.quantity.Uncertain;

/** The findings of a run that was broken off and of the run that went on with it, as those of one. */
public final class Joined {
    private Joined() {}

    /**
     * One list of steps.
     *
     * @param before of the run that was broken off; the last is the step in which that happened
     * @param outageSeconds from its last scan to the moment at which the other went on
     * @param amps current ordered when it was broken off, A, magnitude
     * @param after of the run that went on; the first is the rest of that step, unless none has ended yet
     */
    public static List<StepFinding> of(List<StepFinding> before, double outageSeconds, double amps, List<StepFinding> after) {
        if (before.isEmpty() || after.isEmpty() || before.getLast().index() != after.getFirst().index()) {
            return Stream.concat(before.stream(), after.stream()).toList();
        }
        List<StepFinding> whole = new ArrayList<>(before.subList(0, before.size() - 1));
        whole.add(joined(before.getLast(), new Break(outageSeconds, amps, after.getFirst().seconds()), after.getFirst()));
        whole.addAll(after.subList(1, after.size()));
        return List.copyOf(whole);
    }

    private static StepFinding joined(StepFinding a, Break broken, StepFinding b) {
        double seconds = a.seconds() + b.seconds();
        Budget budget = a.chargeBudget().plus(b.chargeBudget());
        double charge = a.chargeAmpHours().value() + b.chargeAmpHours().value();
        List<Break> breaks = new ArrayList<>(a.breaks().stream().map(earlier -> earlier.later(b.seconds())).toList());
        breaks.add(broken);
        double body = seconds == 0 ? b.meanBodyCelsius()
                : (a.meanBodyCelsius() * a.seconds() + b.meanBodyCelsius() * b.seconds()) / seconds;
        return new StepFinding(a.index(), a.kind(), seconds, new Uncertain(charge, budget.expanded()), budget,
                a.trapezoidAmpHours() + b.trapezoidAmpHours(), sum(a.energyWattHours(), b.energyWattHours()),
                a.lowest().value() <= b.lowest().value() ? a.lowest() : b.lowest(),
                a.highest().value() >= b.highest().value() ? a.highest() : b.highest(),
                a.hottest().value() >= b.hottest().value() ? a.hottest() : b.hottest(),
                body, a.startAmps(), b.endVoltsPerSecond(), b.by(), b.settled(), breaks);
    }

    /** The same taps and the same shunt err the same way in both. */
    private static Uncertain sum(Uncertain a, Uncertain b) {
        return new Uncertain(a.value() + b.value(), a.expanded() + b.expanded());
    }
}
