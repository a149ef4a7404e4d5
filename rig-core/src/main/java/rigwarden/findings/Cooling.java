package rigwarden.findings;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import rigwarden.findings.number.Curve;
import rigwarden.findings.trace.Warmth;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;

/**
 * How a warm body cools at rest: by one exponential over the room, after the quick part that comes from within.
 *
 * @param where the probe on the body
 * @param seconds time constant
 * @param budget of it, s
 * @param kelvin rise over the room when the rest began, less what is left of it at its end: the same two probes, so that their errors fall out
 */
record Cooling(Channel where, double seconds, Budget budget, double kelvin) {
    /** A rise of less than this tells no time constant, K (project's assumption). */
    private static final double LEAST_K = 2;
    /** A rest must be so many time constants long. */
    private static final double LONG = 4;
    /** So much of a time constant goes by before the inside of a body follows its skin, and after so many nothing is left. */
    private static final double FROM = 0.15;
    private static final double UNTIL = 6;
    private static final int LEAST_POINTS = 12;
    private static final double ALIKE = 4;
    /** A body is not one clock: what one exponential may be off by, limits, relative (project's assumption). */
    private static final double ONE_CLOCK = 0.05;

    /** Of a rest; nothing where it was not warm, not long enough, or the room is not known. */
    static Optional<Cooling> of(StepNotes rest, Warmth body) {
        Optional<Warmth> room = rest.warmth().stream().filter(w -> w.where().role() == Role.ROOM).findFirst();
        if (room.isEmpty() || body.where().role() != Role.BODY) {
            return Optional.empty();
        }
        double[] seconds = Arrays.stream(body.hours()).map(hour -> 3600 * hour).toArray();
        double[] skin = body.celsius();
        double[] over = IntStream.range(0, skin.length).mapToDouble(i -> skin[i] - room.get().celsius()[i]).toArray();
        double kelvin = body.atRestCelsius() - room.get().atRestCelsius() - (over.length == 0 ? Double.NaN : over[over.length - 1]);
        if (!(kelvin >= LEAST_K) || Arrays.stream(over).anyMatch(Double::isNaN)) {
            return Optional.empty();
        }
        double last = seconds[seconds.length - 1];
        return fit(seconds, over, 0, last).map(rough -> rough.parameters()[2]).filter(tau -> tau > 0 && last >= LONG * tau)
                .flatMap(tau -> timed(seconds, over, skin, tau)).map(timed -> new Cooling(body.where(), timed.tau(), timed.budget(), kelvin));
    }

    private record Timed(double tau, Budget budget) {}

    /** All of it, its two parts, and the skin alone against surroundings that are taken as steady. */
    private static Optional<Timed> timed(double[] seconds, double[] over, double[] skin, double rough) {
        double from = FROM * rough;
        double until = Math.min(UNTIL * rough, seconds[seconds.length - 1]);
        Optional<Curve.Fit> all = fit(seconds, over, from, until);
        Optional<Curve.Fit> early = fit(seconds, over, from, from + (until - from) / 2);
        Optional<Curve.Fit> late = fit(seconds, over, from + rough, until);
        Optional<Curve.Fit> alone = fit(seconds, skin, from, until);
        if (all.isEmpty() || early.isEmpty() || late.isEmpty() || alone.isEmpty()) {
            return Optional.empty();
        }
        double tau = all.get().parameters()[2];
        return Optional.of(new Timed(tau, new Budget(List.of(
                Budget.limits("one clock for a body", ONE_CLOCK * tau),
                Budget.limits("its early and its late part", Math.abs(early.get().parameters()[2] - late.get().parameters()[2])),
                Budget.limits("what it is held against", Math.abs(alone.get().parameters()[2] - tau)),
                new Budget.Term("points around the curve", Math.sqrt(ALIKE) * all.get().standard(2), all.get().freedom())))));
    }

    private static Optional<Curve.Fit> fit(double[] seconds, double[] kelvin, double from, double until) {
        int[] in = IntStream.range(0, seconds.length).filter(i -> seconds[i] >= from && seconds[i] <= until).toArray();
        if (in.length < LEAST_POINTS) {
            return Optional.empty();
        }
        double[] x = Arrays.stream(in).mapToDouble(i -> seconds[i]).toArray();
        double[] y = Arrays.stream(in).mapToDouble(i -> kelvin[i]).toArray();
        Curve curve = (at, p) -> p[2].reciprocal().multiply(-at).exp().multiply(p[1]).add(p[0]);
        try {
            return Optional.of(curve.through(x, y, y[y.length - 1], y[0] - y[y.length - 1], (x[x.length - 1] - x[0]) / 5));
        } catch (MathRuntimeException _) {
            return Optional.empty();
        }
    }

    Finding finding(StepNotes rest) {
        return new Finding(Kind.HEAT, Words.step(rest.sums()) + ", " + where.name() + ", time constant", new Answer.Value(seconds, "s", budget),
                Conditions.of(rest), List.of(Words.say("it cooled by %.2f K over the room", kelvin)), rest.continuity().firstScan(),
                rest.continuity().lastScan());
    }
}
