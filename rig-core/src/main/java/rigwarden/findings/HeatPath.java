package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Warmth;
import rigwarden.rig.Channel;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/**
 * How well a body's heat leaves it: how it cools at rest, and where it was warmed by pulses in and out until it warmed no
 * further, its rise for each watt. In such pulses what goes in and does not come out again is heat.
 */
final class HeatPath {
    /** Pulses that warmed it must have lasted so many time constants. */
    private static final double LONG = 4;
    /** The heat is that of the last so many. */
    private static final double LAST = 3;
    /** What is known of a rise, K, standard: noise and rounding of two readings. */
    private static final double RISE_K = 0.05;
    /** Between the rows of one pulse and of the next as much heat comes as within them, but for this part, limits (project's assumption). */
    private static final double BETWEEN = 0.25;

    private HeatPath() {}

    /** Of the bodies in a rest; nothing where they were not warm, or the rest was too short. */
    static List<Finding> of(Traced traced, List<StepNotes> steps, StepNotes rest) {
        List<Finding> found = new ArrayList<>();
        for (Warmth body : rest.warmth()) {
            Cooling.of(rest, body).ifPresent(cooling -> {
                found.add(cooling.finding(rest));
                perWatt(traced, steps, rest, cooling).ifPresent(found::add);
            });
        }
        return found;
    }

    private static Optional<Finding> perWatt(Traced traced, List<StepNotes> steps, StepNotes rest, Cooling cooling) {
        int end = steps.indexOf(rest);
        while (end > 0 && steps.get(end - 1).sums().kind().equals("rest") && steps.get(end - 1).sums().seconds() < cooling.seconds() / 100) {
            end--;
        }
        double apart = traced.scanNanos() * 1e-9;
        Loss loss = new Loss();
        double seconds = 0;
        for (int i = end - 1; i >= 0 && steps.get(i).sums().kind().equals("pulse"); i--) {
            if (seconds <= LAST * cooling.seconds()) {
                loss.take(steps.get(i).sums());
            }
            seconds += steps.get(i).sums().seconds() + apart;
        }
        if (traced.cells().series() != 1 || seconds < LONG * cooling.seconds() || !(loss.watts() > 0)) {
            return Optional.empty();
        }
        double value = cooling.kelvin() / loss.watts();
        double missing = loss.pulses * apart / (loss.seconds + loss.pulses * apart);
        Channel tap = traced.channel(Role.CELL_VOLTS);
        Budget budget = new Budget(List.of(
                Budget.standard("the rise", RISE_K / loss.watts()),
                Budget.limits("between the rows of two pulses", BETWEEN * missing * value),
                Budget.limits("not yet as warm as it gets", Math.exp(-seconds / cooling.seconds()) * value),
                Budget.standard(Nature.TAPS, "tap gain", tap.gainU() / 2 * value),
                Budget.standard(Nature.GAIN, Budgets.FOREIGN_SCALE, currentGainU(traced) * value)));
        return Optional.of(new Finding(Kind.HEAT, Words.step(rest.sums()) + ", " + cooling.where().name() + ", rise for each watt",
                new Answer.Value(value, "K/W", budget), List.of(Words.say("%.3f W in %d pulses before the rest, %.2f K over the room", loss.watts(),
                        loss.pulses, cooling.kelvin())), List.of("between the probe and the room; the inside of the cell is warmer"),
                rest.continuity().firstScan(), rest.continuity().lastScan()));
    }

    private static double currentGainU(Traced traced) {
        return switch (traced) {
            case Rig rig -> rig.channel(Role.CURRENT).gainU() / 2;
            case ForeignLog log -> log.gainLimits() / Math.sqrt(3);
        };
    }

    /** Energy that went in and did not come out again; a charge that stayed in is no heat. */
    private static final class Loss {
        private double wattHours;
        private double movedWattHours;
        private double ampHours;
        private double movedAmpHours;
        private double seconds;
        private int pulses;

        void take(StepFinding pulse) {
            wattHours += pulse.energyWattHours().value();
            movedWattHours += Math.abs(pulse.energyWattHours().value());
            ampHours += pulse.chargeAmpHours().value();
            movedAmpHours += Math.abs(pulse.chargeAmpHours().value());
            seconds += pulse.seconds();
            pulses++;
        }

        double watts() {
            double meanVolts = movedAmpHours == 0 ? 0 : movedWattHours / movedAmpHours;
            return seconds == 0 ? 0 : 3600 * (wattHours - meanVolts * ampHours) / seconds;
        }
    }
}
