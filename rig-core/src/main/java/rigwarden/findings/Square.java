package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Warmth;
import rigwarden.rig.Role;

/** Whether the joints of a pack warm as the square of the current says, from an earlier run to this one. */
final class Square {
    /** A joint is settled after three of its longest time constants, h. */
    private static final double SETTLED_HOURS = 3 * Forecast.LONG_HOURS;
    /** So many standard uncertainties make a change (JCGM 100, G.1.3: 99 % of a normal distribution is 2.58). */
    private static final double CHANGED = 2.58;

    private Square() {}

    /**
     * Rise of a joint over its own cell at the end of a step, zeroed when the step began.
     *
     * @param place column of its probe
     * @param kelvin rise
     * @param amps root of the current's mean square over the step's last settled part
     */
    record Rise(String place, double kelvin, double amps) {}

    /**
     * Scales the rises of an earlier run to this run's current, and compares.
     *
     * @param earlier a run of the same rig
     * @param called how a person calls it, for example "run 12"
     */
    static Finding between(Gathered earlier, String called, Gathered now) {
        List<Rise> before = rises(earlier);
        List<Rise> after = rises(now);
        Answer answer;
        List<String> notes = new ArrayList<>();
        List<String> conditions = List.of();
        if (before.isEmpty() || after.isEmpty()) {
            answer = new Answer.Refused((before.isEmpty() ? called : "this run") + " has no step in which a watched joint settled: current for "
                    + Words.say("%.0f min", SETTLED_HOURS * 60));
        } else {
            conditions = List.of(Words.say("%s at %.0f A, this run at %.0f A", called, before.getFirst().amps(), after.getFirst().amps()));
            answer = compared(before, after, notes);
        }
        return new Finding(Kind.SQUARE, called + " to this run", answer, conditions, notes,
                now.steps().isEmpty() ? 0 : now.steps().getFirst().continuity().firstScan(),
                now.steps().isEmpty() ? 0 : now.steps().getLast().continuity().lastScan());
    }

    private static Answer compared(List<Rise> before, List<Rise> after, List<String> notes) {
        Optional<Answer> refused = Optional.empty();
        Optional<Answer> worst = Optional.empty();
        double most = CHANGED;
        for (Rise rise : after) {
            Optional<Rise> old = before.stream().filter(b -> b.place().equals(rise.place())).findFirst();
            if (old.isEmpty()) {
                continue;
            }
            switch (Heat.scaled(old.get().kelvin(), Heat.ZEROED_K, old.get().amps(), rise.amps())) {
                case Answer.Value said -> {
                    double doubt = Math.hypot(said.budget().combined(), Heat.ZEROED_K / 2);
                    notes.add(Words.say("%s %.1f K, by the square %.1f ± %.1f K", rise.place(), rise.kelvin(), said.value(), 2 * doubt));
                    double far = (rise.kelvin() - said.value()) / doubt;
                    if (far > most) {
                        most = far;
                        worst = Optional.of(new Answer.Named(rise.place(), Words.say("%.1f K over its cell where the square of the current says %.1f ± %.1f K:"
                                + " the joint has changed, or its probe has", rise.kelvin(), said.value(), 2 * doubt)));
                    }
                }
                case Answer other -> refused = Optional.of(other);
            }
        }
        if (notes.isEmpty()) {
            return refused.orElseGet(() -> new Answer.Refused("no probe on a joint is in both runs"));
        }
        return worst.orElseGet(() -> new Answer.Named("none", "every watched joint warms as the square of the current says"));
    }

    /** Of the step with the most current in which joints settled. */
    private static List<Rise> rises(Gathered run) {
        List<Rise> best = List.of();
        for (StepNotes step : run.steps()) {
            List<Rise> rises = rises(step);
            if (!rises.isEmpty() && (best.isEmpty() || rises.getFirst().amps() > best.getFirst().amps())) {
                best = rises;
            }
        }
        return best;
    }

    private static List<Rise> rises(StepNotes step) {
        List<Rise> all = new ArrayList<>();
        for (Warmth joint : step.warmth()) {
            Optional<Warmth> body = step.warmth().stream()
                    .filter(w -> w.where().role() == Role.BODY && w.where().cell() == joint.where().cell()).findFirst();
            int last = joint.hours().length - 1;
            if (!joint.where().role().joint() || body.isEmpty() || last < 0 || joint.hours()[last] < SETTLED_HOURS) {
                continue;
            }
            double kelvin = joint.celsius()[last] - joint.atRestCelsius() - body.get().celsius()[last] + body.get().atRestCelsius();
            double amps = Math.sqrt(settledSquare(joint));
            if (!Double.isNaN(kelvin) && amps > 1) {
                all.add(new Rise(joint.where().name(), kelvin, amps));
            }
        }
        return all;
    }

    /** Of the part that the joint still remembers. */
    private static double settledSquare(Warmth joint) {
        int last = joint.hours().length - 1;
        double sum = 0;
        int points = 0;
        for (int i = 0; i <= last; i++) {
            if (joint.hours()[last] - joint.hours()[i] <= SETTLED_HOURS) {
                sum += joint.squareAmps()[i];
                points++;
            }
        }
        return sum / points;
    }
}
