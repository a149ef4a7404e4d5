package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Warmth;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** How warm the places were at the end of a step, how warm they will be, and what that says at another current. */
public final class Heat {
    /** Two currents may differ so much for a rise to be scaled from one to the other. */
    private static final double FARTHEST = 2;
    /** What two probes zeroed at rest may still differ by at one temperature, K (project's assumption: their gain, and draught). */
    static final double ZEROED_K = 0.5;
    /** What else than I² is in a rise, limits, relative (project's assumption). */
    private static final double NOT_SQUARE = 0.15;

    private Heat() {}

    /** Highest place at the end of a step with current, and its rise, zeroed at rest. */
    static Optional<Finding> atTheEnd(StepNotes step) {
        Warmth hottest = null;
        for (Warmth place : step.warmth()) {
            boolean rises = place.where().role() != Role.ROOM && place.celsius().length > 0 && !Double.isNaN(last(place));
            if (rises && (hottest == null || last(place) > last(hottest))) {
                hottest = place;
            }
        }
        if (hottest == null) {
            return Optional.empty();
        }
        double probe = hottest.where().uncertainty(last(hottest)) / 2;
        Budget budget = new Budget(List.of(Budget.standard("probe", probe),
                Budget.limits("lag of the bead and mean of the last span", lagging(hottest))));
        double rise = last(hottest) - hottest.atRestCelsius();
        List<String> notes = Double.isNaN(rise) ? List.of()
                : List.of(Words.say("%+.1f K since the step began, by the same probe, so that its own error falls out", rise));
        return Optional.of(new Finding(Kind.HEAT, Words.step(step.sums()) + ", " + hottest.where().name(),
                new Answer.Value(last(hottest), "°C", budget), Conditions.of(step), notes, step.continuity().firstScan(),
                step.continuity().lastScan()));
    }

    private static double last(Warmth place) {
        return place.celsius().length == 0 ? Double.NaN : place.celsius()[place.celsius().length - 1];
    }

    /** How far the place went on within a bead's lag and half a span, K. */
    private static double lagging(Warmth place) {
        int n = place.celsius().length;
        if (n < 2) {
            return 0.5;
        }
        double span = place.hours()[n - 1] - place.hours()[n - 2];
        double perHour = Math.abs(place.celsius()[n - 1] - place.celsius()[n - 2]) / span;
        return perHour * (place.where().lagSeconds() / 3600 + span / 2);
    }

    /**
     * Temperature of every body and of all that warms by the current at the end of a running step: a body on its slow clock over
     * the room, a joint on its quick one over its cell, shunt and contactor on the same over the room.
     *
     * @param warmth of the step until now
     * @param endHours when the step will end, since it began
     * @param squareAmps mean of the current's square from now until then, A²; a sink of constant power raises it
     * @param reversible of a cell, where it is known how full it was when the step began
     */
    public static List<Ahead> ahead(List<Warmth> warmth, double endHours, double squareAmps, Optional<Reversible> reversible) {
        Optional<Warmth> room = warmth.stream().filter(w -> w.where().role() == Role.ROOM).findFirst();
        List<Ahead> all = new ArrayList<>();
        for (Warmth body : warmth) {
            if (body.where().role() == Role.BODY && room.isPresent()) {
                BodyForecast.of(over(body, room.get()), endHours, squareAmps, reversible).ifPresent(f -> all.add(new Ahead(body.where(),
                        f.celsius() + last(room.get()), probed(f.expandedKelvin(), body.where()), f.expandedKelvin(), f.settled())));
            }
        }
        for (Warmth part : warmth) {
            if (part.where().role().warmsByCurrent() && !part.where().role().joint() && room.isPresent()) {
                Forecast.ofJoint(over(part, room.get()), endHours, squareAmps).ifPresent(f -> all.add(new Ahead(part.where(),
                        f.celsius() + last(room.get()), probed(f.expandedKelvin(), part.where()), f.expandedKelvin(), f.settled())));
            }
        }
        for (Warmth joint : warmth) {
            Optional<Ahead> cell = all.stream()
                    .filter(a -> a.where().role() == Role.BODY && a.where().cell() == joint.where().cell()).findFirst();
            Optional<Warmth> body = warmth.stream()
                    .filter(w -> w.where().role() == Role.BODY && w.where().cell() == joint.where().cell()).findFirst();
            if (joint.where().role().joint() && cell.isPresent() && body.isPresent()) {
                Forecast.ofJoint(over(joint, body.get()), endHours, squareAmps).ifPresent(f -> all.add(new Ahead(joint.where(),
                        f.celsius() + cell.get().celsius(), Math.hypot(f.expandedKelvin(), cell.get().expandedKelvin()),
                        Math.hypot(f.expandedKelvin(), cell.get().readKelvin()),
                        f.settled() && cell.get().settled())));
            }
        }
        return List.copyOf(all);
    }

    /**
     * A place at the end of the step.
     *
     * @param where its channel
     * @param celsius forecast of the true temperature
     * @param expandedKelvin at 95.45 %, the probe's own error included
     * @param readKelvin the same of what the probe will read
     * @param settled whether a plateau may be spoken of
     */
    public record Ahead(Channel where, double celsius, double expandedKelvin, double readKelvin, boolean settled) {}

    private static double probed(double expandedKelvin, Channel probe) {
        return Math.hypot(expandedKelvin, probe.offsetU());
    }

    private static Warmth over(Warmth place, Warmth reference) {
        double[] rise = new double[place.celsius().length];
        Arrays.setAll(rise, i -> place.celsius()[i] - reference.celsius()[i]);
        return new Warmth(place.where(), place.atRestCelsius() - reference.atRestCelsius(), place.hours(), rise, place.amps(), place.squareAmps());
    }

    /**
     * A rise at another current: as the square.
     *
     * @param kelvin rise at the end of a run
     * @param expandedKelvin of it
     * @param amps current of that run, root of its mean square
     * @param otherAmps current asked for
     */
    public static Answer scaled(double kelvin, double expandedKelvin, double amps, double otherAmps) {
        double ratio = otherAmps / amps;
        if (!(ratio >= 1 / FARTHEST && ratio <= FARTHEST)) {
            return new Answer.Refused(Words.say("%.0f A is too far from the %.0f A that were measured", otherAmps, amps));
        }
        double square = ratio * ratio;
        return new Answer.Value(kelvin * square, "K", new Budget(List.of(
                Budget.standard("the rise that was measured", expandedKelvin / 2 * square),
                Budget.limits("what does not go as the square", NOT_SQUARE * kelvin * Math.abs(square - 1)))));
    }

    /** Warmth of every watched joint over its cells at the end of a step, zeroed when it began. */
    static List<Joints.Warm> joints(Traced rig, StepNotes step) {
        List<Joints.Warm> all = new ArrayList<>();
        for (Warmth joint : step.warmth()) {
            if (joint.where().role() != Role.BAR || joint.celsius().length == 0) {
                continue;
            }
            double[] cells = step.warmth().stream()
                    .filter(w -> w.where().role() == Role.BODY && w.celsius().length > 0)
                    .filter(w -> w.where().cell() == joint.where().cell() || w.where().cell() == joint.where().cell() + 1)
                    .mapToDouble(w -> last(w) - w.atRestCelsius()).toArray();
            double over = last(joint) - joint.atRestCelsius() - Arrays.stream(cells).average().orElse(Double.NaN);
            if (!Double.isNaN(over)) {
                all.add(new Joints.Warm(joint.where().cell(), over, ZEROED_K));
            }
        }
        return all;
    }
}
