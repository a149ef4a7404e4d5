package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rigwarden.findings.trace.Warmth;
import rigwarden.quantity.Uncertain;

/** What is kept of a run that was broken off and of the run that went on with it, as of one run. */
public final class Joined {
    /** Below it a step has moved nothing, Ah. */
    private static final double NOTHING_AMP_HOURS = 0.1;

    private Joined() {}

    /**
     * The run that went on, alone, where nothing is known of the other: its first step is the rest of one that was broken off.
     *
     * @param outageSeconds from the other's last scan to the moment at which it went on
     * @param amps current ordered when the other was broken off, A, magnitude
     * @param step number of the step in which that happened
     */
    public static Gathered alone(double outageSeconds, double amps, int step, Gathered after) {
        Gathered later = after.goneOn(0);
        if (later.steps().isEmpty() || later.steps().getFirst().sums().index() != step) {
            return later;
        }
        StepNotes first = later.steps().getFirst();
        Break broken = new Break(outageSeconds, amps, first.sums().actingSeconds());
        List<StepNotes> steps = new ArrayList<>(later.steps());
        steps.set(0, first.with(first.sums().broken(List.of(broken)), first.zero()));
        return new Gathered(steps, later.edges(), later.rows(), later.missingRows(), later.visits(), later.droppedEdges());
    }

    /**
     * Both as one. The scans of the run that went on are counted on from those of the other.
     *
     * @param before of the run that was broken off; the last step is the one in which that happened
     * @param outageSeconds from its last scan to the moment at which the other went on
     * @param amps current ordered when it was broken off, A, magnitude
     * @param after of the run that went on; the first step is the rest of that one
     */
    public static Gathered of(Gathered before, double outageSeconds, double amps, Gathered after) {
        Gathered later = after.goneOn(before.scans());
        return new Gathered(steps(before.steps(), outageSeconds, amps, later.steps()), both(before.edges(), later.edges()),
                before.rows() + later.rows(), before.missingRows() + later.missingRows(), both(before.visits(), later.visits()),
                before.droppedEdges() + later.droppedEdges());
    }

    private static <T> List<T> both(List<T> first, List<T> second) {
        return Stream.concat(first.stream(), second.stream()).toList();
    }

    private static List<StepNotes> steps(List<StepNotes> before, double outageSeconds, double amps, List<StepNotes> after) {
        if (before.isEmpty() || after.isEmpty() || before.getLast().sums().index() != after.getFirst().sums().index()) {
            return both(before, after);
        }
        List<StepNotes> whole = new ArrayList<>(before.subList(0, before.size() - 1));
        StepNotes rest = after.getFirst();
        whole.add(joined(before.getLast(), new Break(outageSeconds, amps(amps, before.getLast()), rest.sums().actingSeconds()), rest));
        whole.addAll(after.subList(1, after.size()));
        return List.copyOf(whole);
    }

    /** A device that takes no set point may have drawn more than was ordered. Where nothing was ordered any more, the current was seen to stop. */
    private static double amps(double ordered, StepNotes last) {
        return ordered == 0 ? 0 : Math.max(ordered, Math.abs(last.knees().endAmps()));
    }

    private static StepNotes joined(StepNotes a, Break broken, StepNotes b) {
        double laterHours = (a.sums().seconds() + a.sums().outageSeconds() + broken.outageSeconds()) / 3600;
        boolean flows = !a.sums().kind().equals("rest");
        return new StepNotes(joined(a.sums(), broken, b.sums()), a.continuity().then(b.continuity()), a.knees().then(b.knees()),
                warmth(a, b, flows, laterHours), a.rest().then(b.rest(), laterHours), a.busWattHours() + b.busWattHours(),
                mean(a.meanRoomCelsius(), a.sums().seconds(), b.meanRoomCelsius(), b.sums().seconds()), Optional.empty(),
                a.device().flatMap(first -> b.device().filter(second -> second.name().equals(first.name())).map(first::then)), List.of());
    }

    /** Under current a place forgets the outage as it forgets a rest: of such a step the second part tells, over what the place had before the first. */
    private static List<Warmth> warmth(StepNotes a, StepNotes b, boolean flows, double laterHours) {
        List<Warmth> places = new ArrayList<>();
        for (int i = 0; i < b.warmth().size(); i++) {
            Warmth first = a.warmth().get(i);
            Warmth second = b.warmth().get(i);
            places.add(flows ? second.since(first) : first.then(second, laterHours));
        }
        return List.copyOf(places);
    }

    /** Half of what may have flowed unseen until the contactor was open is in the charge, and the rest of it in the budget; in the energy likewise. */
    private static StepFinding joined(StepFinding a, Break broken, StepFinding b) {
        double seconds = a.seconds() + b.seconds();
        Budget budget = a.chargeBudget().plus(b.chargeBudget()).plus(new Budget(List.of(broken.unseen())));
        double seen = a.chargeAmpHours().value() + b.chargeAmpHours().value();
        double charge = seen + Math.signum(seen) * broken.halfUnseenAmpHours();
        List<Break> breaks = new ArrayList<>(a.breaks().stream().map(earlier -> earlier.later(b.actingSeconds())).toList());
        breaks.add(broken);
        return new StepFinding(a.index(), a.kind(), seconds, a.flowSeconds() + b.flowSeconds(), new Uncertain(charge, budget.expanded()), budget,
                a.trapezoidAmpHours() + b.trapezoidAmpHours(), energy(a, b, seen == 0 ? 0 : charge / seen, broken),
                a.lowest().value() <= b.lowest().value() ? a.lowest() : b.lowest(),
                a.highest().value() >= b.highest().value() ? a.highest() : b.highest(),
                a.hottest().value() >= b.hottest().value() ? a.hottest() : b.hottest(),
                mean(a.meanBodyCelsius(), a.actingSeconds(), b.meanBodyCelsius(), b.actingSeconds()), a.startAmps(), b.endVoltsPerSecond(), b.by(),
                b.settled(), breaks);
    }

    /** The same taps and the same shunt err the same way in both. Where the sums of one were never written, those of both are not known. */
    private static Uncertain energy(StepFinding a, StepFinding b, double withUnseen, Break broken) {
        if (unwritten(a) || unwritten(b)) {
            return new Uncertain(0, 0);
        }
        double seen = a.energyWattHours().value() + b.energyWattHours().value();
        double charge = a.chargeAmpHours().value() + b.chargeAmpHours().value();
        double unseen = charge == 0 ? 0 : Math.abs(seen / charge) * new Budget(List.of(broken.unseen())).expanded();
        return new Uncertain(withUnseen * seen, Math.hypot(a.energyWattHours().expanded() + b.energyWattHours().expanded(), unseen));
    }

    private static boolean unwritten(StepFinding part) {
        return part.energyWattHours().value() == 0 && Math.abs(part.chargeAmpHours().value()) > NOTHING_AMP_HOURS;
    }

    /** Of what is known: a part in which nobody read it says nothing. */
    private static double mean(double first, double firstSeconds, double second, double secondSeconds) {
        if (Double.isNaN(first) || firstSeconds == 0) {
            return second;
        }
        if (Double.isNaN(second) || secondSeconds == 0) {
            return first;
        }
        return (first * firstSeconds + second * secondSeconds) / (firstSeconds + secondSeconds);
    }
}
