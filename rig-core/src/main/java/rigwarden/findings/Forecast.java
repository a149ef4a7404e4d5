package rigwarden.findings;

import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import rigwarden.findings.trace.Warmth;

/**
 * A temperature at a later time, from how it rose until now. How long a place takes to settle is not asked of the first part
 * of a rise, which cannot tell: every time constant of a range is tried, each counts by how well it fits, and their spread
 * is in the interval.
 *
 * @param celsius at the later time, as the probe will read it
 * @param expandedKelvin at 95.45 %, of the forecast alone, without the probe's own error
 * @param settled whether two of the longest time constants that still fit are over, so that a plateau may be spoken of
 */
public record Forecast(double celsius, double expandedKelvin, boolean settled) {
    private static final int TRIED = 25;
    private static final int LEAST_POINTS = 6;
    /** Noise and rounding of a mean of readings, K: no fit is believed more. */
    private static final double LEAST_K = 0.05;
    /** Neighbouring residuals are alike: so many points count as one. */
    private static final double ALIKE = 4;
    /**
     * What a heat that is not the current's square alone does to what is still to come, limits, relative: the reversible heat,
     * T dU/dT over I R with 0.1 mV/K (check-values 9.2), 50 A and 1 mΩ; its course over the charge is not modelled here.
     */
    private static final double SOURCE = 0.6;
    /** Prior of what the rise began with, and of how fast it is driven, K and K per A²: wide. */
    private static final double[] PRIOR = {5, 1};

    /**
     * The range of a place's time constant.
     *
     * @param shortHours shortest
     * @param longHours longest
     */
    public record Clock(double shortHours, double longHours) {
        /** A body: one to four hours for large cells (common practice, no source). */
        public static final Clock BODY = new Clock(1, 4);
        /** A joint over its cell: minutes (assumption of the pack model). */
        public static final Clock JOINT = new Clock(0.008, 0.25);
    }

    /**
     * Over a reference that is taken as it is.
     *
     * @param over rise over the reference, K, by time
     * @param untilHours time of the forecast
     * @param squareAmps mean of the current's square from now until then, A²
     * @return nothing with fewer than six points
     */
    public static Optional<Forecast> of(Warmth over, Clock clock, double untilHours, double squareAmps) {
        int points = over.hours().length;
        if (points < LEAST_POINTS || IntStream.range(0, points).anyMatch(i -> Double.isNaN(over.celsius()[i]) || Double.isNaN(over.squareAmps()[i]))) {
            return Optional.empty();
        }
        double scale = IntStream.range(0, points).mapToDouble(i -> over.squareAmps()[i]).average().orElse(1);
        Tried[] tried = IntStream.range(0, TRIED).mapToObj(i -> clock.shortHours()
                * Math.pow(clock.longHours() / clock.shortHours(), i / (TRIED - 1.0)))
                .map(tau -> attempt(over, tau, untilHours, squareAmps, Math.max(scale, 1e-9))).toArray(Tried[]::new);
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

    /** One time constant: what is left of the squares, what it says, and how sure the fit is in units of its noise. */
    private record Tried(double tau, double squares, double end, double unitVariance) {}

    private static Tried attempt(Warmth over, double tau, double untilHours, double squareAmps, double scale) {
        int points = over.hours().length;
        double[][] rows = new double[points][];
        double driven = 0;
        double before = 0;
        for (int i = 0; i < points; i++) {
            double keep = Math.exp(-(over.hours()[i] - before) / tau);
            driven = driven * keep + over.squareAmps()[i] / scale * (1 - keep);
            rows[i] = new double[] {Math.exp(-over.hours()[i] / tau), driven};
            before = over.hours()[i];
        }
        RealMatrix a = new Array2DRowRealMatrix(rows, false);
        RealVector y = new ArrayRealVector(over.celsius());
        RealMatrix normal = a.transposeMultiply(a);
        for (int i = 0; i < PRIOR.length; i++) {
            double prior = LEAST_K / (i == 0 ? PRIOR[0] : 100 * PRIOR[1]);
            normal.addToEntry(i, i, prior * prior);
        }
        CholeskyDecomposition solved = new CholeskyDecomposition(normal);
        RealVector x = solved.getSolver().solve(a.transpose().operate(y));
        RealVector left = y.subtract(a.operate(x));
        double keep = Math.exp(-(untilHours - before) / tau);
        RealVector at = new ArrayRealVector(new double[] {Math.exp(-untilHours / tau),
            driven * keep + squareAmps / scale * (1 - keep)});
        return new Tried(tau, left.dotProduct(left), at.dotProduct(x), at.dotProduct(solved.getSolver().solve(at)));
    }
}
