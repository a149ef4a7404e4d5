package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import rigwarden.program.Ended;

/** Every ampere-hour in and out between two equal states, and what came out of what was put in. */
final class ChargeAccount {
    /** Beyond it more comes out than went in, which no cell does: a fault of the measurement (check-values 9.2). */
    private static final double IMPOSSIBLE = 1.002;

    /**
     * Two ends by taper are equally full within what flows in so long at the current of the taper, h, limits (project's assumption: a
     * charge topped up from nearly full and one from empty ended 0.01 to 0.15 Ah apart at 5.25 A in the pack model).
     */
    private static final double ALIKE_HOURS = 0.04;

    private ChargeAccount() {}

    /** Between each two neighbouring ends by taper, where the cells were full. */
    static List<Finding> of(List<StepNotes> steps) {
        List<Finding> found = new ArrayList<>();
        List<StepNotes> between = null;
        double before = 0;
        for (StepNotes step : steps) {
            if (between != null) {
                between.add(step);
            }
            if (step.sums().kind().equals("charge") && step.sums().by() == Ended.TAPER) {
                if (between != null) {
                    found.addAll(closed(between, Math.max(before, Math.abs(step.knees().endAmps()))));
                }
                between = new ArrayList<>();
                before = Math.abs(step.knees().endAmps());
            }
        }
        if (found.isEmpty()) {
            found.add(new Finding(Kind.ACCOUNT, "the run", new Answer.Refused(
                    "the cells were not full twice, so that the sum in has nothing to close against"), List.of(),
                    List.of(total(steps, "over all steps")), first(steps), last(steps)));
        }
        return found;
    }

    private static String total(List<StepNotes> steps, String over) {
        double in = steps.stream().mapToDouble(s -> Math.max(0, s.sums().chargeAmpHours().value())).sum();
        double out = steps.stream().mapToDouble(s -> Math.max(0, -s.sums().chargeAmpHours().value())).sum();
        return Words.say("%.2f Ah went in and %.2f Ah came out %s", in, out, over);
    }

    private static long first(List<StepNotes> steps) {
        return steps.isEmpty() ? 0 : steps.getFirst().continuity().firstScan();
    }

    private static long last(List<StepNotes> steps) {
        return steps.isEmpty() ? 0 : steps.getLast().continuity().lastScan();
    }

    private static List<Finding> closed(List<StepNotes> between, double taperAmps) {
        String about = Words.say("from full before step %d to full after step %d", between.getFirst().sums().index(),
                between.getLast().sums().index());
        if (between.stream().anyMatch(s -> !Charge.refusal(s).isEmpty())) {
            return List.of(finding(Kind.ACCOUNT, about, between, new Answer.Refused("the charge of one of its steps is not told"), List.of()));
        }
        List<StepFinding> sums = between.stream().map(StepNotes::sums).toList();
        double in = sums.stream().mapToDouble(s -> Math.max(0, s.chargeAmpHours().value())).sum();
        double out = sums.stream().mapToDouble(s -> Math.max(0, -s.chargeAmpHours().value())).sum();
        Budget net = net(sums, taperAmps);
        boolean closes = Math.abs(in - out) <= net.expanded();
        List<Finding> found = new ArrayList<>();
        found.add(finding(Kind.ACCOUNT, about, between, new Answer.Value(in - out, "Ah", net), List.of(total(between, "over these steps"), closes
                ? "it closes within its uncertainty"
                : "it does not close within its uncertainty: what is over went into side reactions, a balancer or a leak, or"
                        + " one of the two ends was not as full as the other, or the shunt reads otherwise warm than cold")));
        if (in > 1 && out > 1) {
            found.add(efficiency(about, between, in, out, net));
            found.add(energy(about, between, sums, net));
        }
        return found;
    }

    /** The charges' own, and how alike the two full ends were. */
    private static Budget net(List<StepFinding> sums, double taperAmps) {
        List<Budget.Term> terms = new ArrayList<>(Budgets.net(sums).terms());
        terms.add(Budget.limits("two full ends alike", ALIKE_HOURS * taperAmps));
        return new Budget(terms);
    }

    private static Finding efficiency(String about, List<StepNotes> between, double in, double out, Budget net) {
        double share = out / in;
        return finding(Kind.EFFICIENCY, about + ", charge", between, new Answer.Value(100 * share, "%", net.times(100 / in)),
                share > IMPOSSIBLE ? List.of("more came out than went in: a fault of the measurement, not a good cell") : List.of());
    }

    /** The same taps and shunt on both ways: their gains fall out of the share, the offsets of the taps do too. */
    private static Finding energy(String about, List<StepNotes> between, List<StepFinding> sums, Budget net) {
        double in = sums.stream().mapToDouble(s -> Math.max(0, s.energyWattHours().value())).sum();
        double out = sums.stream().mapToDouble(s -> Math.max(0, -s.energyWattHours().value())).sum();
        if (in <= 0) {
            return finding(Kind.EFFICIENCY, about + ", energy", between, new Answer.Refused("the energy of a step is not told"), List.of());
        }
        double volts = in / sums.stream().mapToDouble(s -> Math.max(0, s.chargeAmpHours().value())).sum();
        return finding(Kind.EFFICIENCY, about + ", energy", between, new Answer.Value(100 * out / in, "%", net.times(100 * volts / in)), List.of());
    }

    private static Finding finding(Kind kind, String about, List<StepNotes> between, Answer answer, List<String> notes) {
        return new Finding(kind, about, answer, List.of(), notes, first(between), last(between));
    }
}
