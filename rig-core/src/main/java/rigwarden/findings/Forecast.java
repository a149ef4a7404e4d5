package rigwarden.findings;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import rigwarden.findings.trace.Warmth;

/**
 * A temperature at a later time: of a body by {@link BodyForecast}, of a joint over its body here. A joint follows its current within
 * minutes: every time constant of a range is tried, each counts by how well it fits, and their spread is in the interval.
 *
 * @param celsius at the later time, as the probe will read it
 * @param expandedKelvin at 95.45 %, of the forecast alone, without the probe's own error
 * @param settled whether two of the longest time constants that may be are over, so that a plateau may be spoken of
 */
public record Forecast(double celsius, double expandedKelvin, boolean settled) {
    private static final int TRIED = 25;
    private static final int LEAST_POINTS = 6;
    /** Noise and rounding of a mean of readings, K: no fit is believed more. */
    private static final double LEAST_K = 0.05;
    /** Neighbouring residuals are alike: so many points count as one. */
    private static final double ALIKE = 4;
    /** What a heat that does not go as the current's square does to what is still to come, limits, relative (project's assumption). */
    private static final double SOURCE = 0.2;
    private static final int STEPS_AHEAD = 60;
    /** Priors: what it began with, K; the current's heat, K; the quick clock's part, K. */
    private static final double[] PRIOR = {5, 100, 3};
    private static final double QUICK_HOURS = 0.1;

    /** A joint's time constant over its cell, h: minutes (assumption of the pack model). */
    private static final double SHORT_HOURS = 0.008;
    static final double LONG_HOURS = 0.25;

    /**
     * Over a reference that is taken as it is.
     *
     * @param over rise over the reference, K, by time
     * @param untilHours time of the forecast
     * @param squareAmps mean of the current's square from now until then, A²
     * @return nothing with fewer than six points
     */
    static Optional<Forecast> ofJoint(Warmth over, double untilHours, double squareAmps) {
        int points = over.hours().length;
        if (points < LEAST_POINTS || IntStream.range(0, points).anyMatch(i -> Double.isNaN(over.celsius()[i]) || Double.isNaN(over.squareAmps()[i]))) {
            return Optional.empty();
        }
        Course course = Course.of(over, untilHours, squareAmps);
        Tried[] tried = IntStream.range(0, TRIED).mapToObj(i -> SHORT_HOURS
                * Math.pow(LONG_HOURS / SHORT_HOURS, i / (TRIED - 1.0)))
                .map(tau -> attempt(over, course, tau)).toArray(Tried[]::new);
        double best = Double.POSITIVE_INFINITY;
        for (Tried t : tried) {
            best = Math.min(best, t.squares());
        }
        double variance = Math.max(LEAST_K * LEAST_K, best / points);
        double weights = 0;
        double mean = 0;
        double longest = 0;
        for (Tried t : tried) {
            double weight = Math.exp(-(t.squares() - best) / (2 * variance * ALIKE));
            weights += weight;
            mean += weight * t.end();
            longest = weight > 0.05 ? Math.max(longest, t.tau()) : longest;
        }
        mean /= weights;
        double spread = 0;
        for (Tried t : tried) {
            double weight = Math.exp(-(t.squares() - best) / (2 * variance * ALIKE)) / weights;
            spread += weight * ((t.end() - mean) * (t.end() - mean) + variance * ALIKE * t.unitVariance());
        }
        double toCome = mean - over.celsius()[points - 1];
        double expanded = 2 * Math.sqrt(spread + Math.pow(SOURCE * toCome, 2) / 3 + LEAST_K * LEAST_K);
        return Optional.of(new Forecast(mean, expanded, over.hours()[points - 1] > 2 * longest));
    }

    /** What drives the place, at the points seen and at steps from there to the end: the current's square over its mean. */
    private record Course(double[] hours, double[] squares) {
        static Course of(Warmth over, double untilHours, double squareAmps) {
            int points = over.hours().length;
            int all = points + STEPS_AHEAD;
            double last = over.hours()[points - 1];
            double scale = Math.max(Arrays.stream(over.squareAmps()).average().orElse(1), 1e-9);
            double[] hours = Arrays.copyOf(over.hours(), all);
            double[] squares = new double[all];
            for (int i = 0; i < all; i++) {
                if (i >= points) {
                    hours[i] = last + (untilHours - last) * (i - points + 1) / STEPS_AHEAD;
                }
                squares[i] = (i < points ? over.squareAmps()[i] : squareAmps) / scale;
            }
            return new Course(hours, squares);
        }
    }

    /** One time constant: what is left of the squares, what it says, and how sure the fit is in units of its noise. */
    private record Tried(double tau, double squares, double end, double unitVariance) {}

    private static Tried attempt(Warmth over, Course course, double tau) {
        int points = over.hours().length;
        int all = course.hours().length;
        double[][] rows = new double[all][];
        double driven = 0;
        double quick = 0;
        double before = 0;
        for (int i = 0; i < all; i++) {
            double hours = course.hours()[i] - before;
            double keep = Math.exp(-hours / tau);
            double keepQuick = Math.exp(-hours / QUICK_HOURS);
            driven = driven * keep + course.squares()[i] * (1 - keep);
            quick = quick * keepQuick + course.squares()[i] * (1 - keepQuick);
            rows[i] = new double[] {Math.exp(-course.hours()[i] / tau), driven, quick};
            before = course.hours()[i];
        }
        RealMatrix a = new Array2DRowRealMatrix(Arrays.copyOf(rows, points), false);
        RealVector y = new ArrayRealVector(over.celsius());
        RealMatrix normal = a.transposeMultiply(a);
        for (int i = 0; i < PRIOR.length; i++) {
            normal.addToEntry(i, i, LEAST_K * LEAST_K / (PRIOR[i] * PRIOR[i]));
        }
        CholeskyDecomposition solved = new CholeskyDecomposition(normal);
        RealVector x = solved.getSolver().solve(a.transpose().operate(y));
        RealVector left = y.subtract(a.operate(x));
        RealVector at = new ArrayRealVector(rows[all - 1]);
        return new Tried(tau, left.dotProduct(left), at.dotProduct(x),
                at.dotProduct(solved.getSolver().solve(at)));
    }
}
