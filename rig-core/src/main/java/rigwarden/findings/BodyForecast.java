package rigwarden.findings;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.distribution.continuous.NormalDistribution;
import rigwarden.findings.number.StraightLine;
import rigwarden.findings.trace.Warmth;

/**
 * How warm a cell's body will be, from its rise over the room and its slope now. The first part of a rise cannot tell how long the
 * body takes to settle, since its heat changes meanwhile: so nothing is read from the curve's shape. Every time constant of the
 * stated range counts alike; for each the heat that now flows in is what slope and losses say, and what becomes of it until the end
 * is stated, with its width.
 *
 * <p>The heat has three parts. What goes as the current's square stays what it is, or falls while a cell comes down from full; it
 * rises towards empty, where every cell's resistance does; and the reversible heat comes and goes with the state of charge.
 */
final class BodyForecast {
    private static final int TRIED = 25;
    private static final int STEPS_AHEAD = 60;
    private static final int LEAST_POINTS = 6;
    /** Slope and height are read from this share of the past, or from a little more early on. */
    private static final double LOOK_BACK_SHARE = 0.1;
    /** Noise and rounding of a mean of readings, K: no line is believed more. */
    private static final double LEAST_K = 0.05;
    /**
     * How much more a cell warms near full and near empty than in its middle, and over which share of its charge that fades: fitted to
     * the pack model at half a capacity an hour, with its slow relaxation smeared in; no cell's data.
     */
    private static final double[] MORE_AT_FULL = {1, 1.5, 2, 2.5, 3};
    private static final double[] MORE_AT_EMPTY = {0.2, 0.35, 0.5, 0.65, 0.8};
    private static final double FULL_SHARE = 0.115;
    private static final double EMPTY_SHARE = 0.05;
    /** What becomes of the heat that goes as the square: it stays, or is up to a quarter less in a warmer cell; limits (project's assumption). */
    private static final double BECOMES = 0.875;
    private static final double BECOMES_LIMITS = 0.125;
    /** The same where nobody knows how full the cell is, and so whether its ends come into it. */
    private static final double UNTOLD = 1;
    private static final double UNTOLD_LIMITS = 0.5;
    /** What the table of the reversible heat and the heat capacity may be wrong by, limits, relative (project's assumption). */
    private static final double REVERSIBLE = 0.2;

    private final Clocks clocks;
    private final double now;
    private final double ahead;
    private final double square;
    private final StraightLine line;
    private final double[] nearFull;
    private final double nearFullNow;
    private final double[] nearEmpty;
    private final double nearEmptyNow;
    private final double[] reversible;
    private final double reversibleNow;
    private final double becomes;
    private final double becomesLimits;

    private BodyForecast(Warmth over, double untilHours, double squareAmps, Optional<Reversible> cell, Clocks clocks) {
        this.clocks = clocks;
        int points = over.hours().length;
        now = over.hours()[points - 1];
        ahead = Math.max(0, untilHours - now);
        double back = now - Math.max(clocks.lookBackHours(), LOOK_BACK_SHARE * now);
        int from = IntStream.range(0, points - LEAST_POINTS).filter(i -> over.hours()[i] >= back).findFirst().orElse(points - LEAST_POINTS);
        line = StraightLine.through(Arrays.copyOfRange(over.hours(), from, points), Arrays.copyOfRange(over.celsius(), from, points), now);
        double squareNow = Arrays.stream(over.squareAmps(), from, points).average().orElseThrow();
        square = squareNow > 0 ? squareAmps / squareNow : 1;
        double[] hours = Arrays.copyOf(over.hours(), points + STEPS_AHEAD);
        double[] amps = Arrays.copyOf(over.amps(), points + STEPS_AHEAD);
        double way = Math.signum(Arrays.stream(over.amps()).filter(each -> !Double.isNaN(each)).sum());
        for (int i = 0; i < STEPS_AHEAD; i++) {
            hours[points + i] = now + ahead * (i + 1) / STEPS_AHEAD;
            amps[points + i] = way * Math.sqrt(squareAmps);
        }
        becomes = cell.isPresent() ? BECOMES : UNTOLD;
        becomesLimits = cell.isPresent() ? BECOMES_LIMITS : UNTOLD_LIMITS;
        double[] charge = cell.map(c -> c.charge(hours, amps)).orElse(new double[0]);
        double[] full = fading(charge, hours.length, s -> (1 - s) / FULL_SHARE);
        double[] empty = fading(charge, hours.length, s -> s / EMPTY_SHARE);
        double[] comes = cell.map(c -> c.kelvinPerHour(hours, amps)).orElse(new double[hours.length]);
        nearFull = Arrays.copyOfRange(full, points, full.length);
        nearFullNow = Arrays.stream(full, from, points).average().orElseThrow();
        nearEmpty = Arrays.copyOfRange(empty, points, empty.length);
        nearEmptyNow = Arrays.stream(empty, from, points).average().orElseThrow();
        reversible = Arrays.copyOfRange(comes, points, comes.length);
        reversibleNow = Arrays.stream(comes, from, points).average().orElseThrow();
    }

    /** Nothing where the charge is not known. */
    private static double[] fading(double[] charge, int points, DoubleUnaryOperator distance) {
        double[] all = new double[points];
        for (int i = 0; i < charge.length; i++) {
            all[i] = Math.exp(-Math.max(0, distance.applyAsDouble(charge[i])));
        }
        return all;
    }

    /**
     * Over the room, which is taken as it is.
     *
     * @param over rise over the room, K, by time
     * @param untilHours time of the forecast, since the step began
     * @param squareAmps mean of the current's square from now until then, A²
     * @param cell what comes and goes with the charge, where it is known how full it was
     * @return nothing with fewer than six points
     */
    static Optional<Forecast> of(Warmth over, double untilHours, double squareAmps, Optional<Reversible> cell) {
        return of(over, untilHours, squareAmps, cell, Clocks.LARGE);
    }

    /** The same of a body of another size. */
    static Optional<Forecast> of(Warmth over, double untilHours, double squareAmps, Optional<Reversible> cell, Clocks clocks) {
        int points = over.hours().length;
        boolean gaps = IntStream.range(0, points).anyMatch(i -> Double.isNaN(over.celsius()[i]) || Double.isNaN(over.squareAmps()[i]));
        return points < LEAST_POINTS || gaps ? Optional.empty() : Optional.of(new BodyForecast(over, untilHours, squareAmps, cell, clocks).forecast());
    }

    private Forecast forecast() {
        double[][] ends = new double[TRIED * MORE_AT_FULL.length * MORE_AT_EMPTY.length][];
        int count = 0;
        for (int i = 0; i < TRIED; i++) {
            Response response = new Response(clocks.tried(i, TRIED));
            for (double atFull : MORE_AT_FULL) {
                for (double atEmpty : MORE_AT_EMPTY) {
                    ends[count++] = response.end(atFull, atEmpty);
                }
            }
        }
        double mean = Arrays.stream(ends).mapToDouble(end -> end[0]).average().orElseThrow();
        return new Forecast(mean, halfWidth(ends, mean), now > 2 * clocks.longHours());
    }

    /** So far on both sides of the mean lie 95.45 % of all that is stated, each possibility with its own scatter. */
    private static double halfWidth(double[][] ends, double mean) {
        double most = Arrays.stream(ends).mapToDouble(end -> Math.abs(end[0] - mean) + 4 * Math.sqrt(end[1])).max().orElseThrow();
        UnivariateFunction missing = u -> Arrays.stream(ends).mapToDouble(end -> within(end, mean, u)).average().orElseThrow() - Budget.COVERAGE;
        return new BrentSolver(1e-3).solve(100, missing, 0, most);
    }

    private static double within(double[] end, double mean, double u) {
        NormalDistribution one = new NormalDistribution(end[0] - mean, Math.sqrt(end[1]));
        return one.probability(-u, u);
    }

    /** What a heat of one kelvin an hour in each of its parts makes until the end, with one time constant, K. */
    private final class Response {
        private final double tau;
        private double constant;
        private double full;
        private double empty;
        private double comesAndGoes;

        Response(double tau) {
            this.tau = tau;
            double each = ahead / STEPS_AHEAD;
            for (int i = 0; i < STEPS_AHEAD; i++) {
                double kept = tau * -Math.expm1(-each / tau) * Math.exp(-(ahead - (i + 1) * each) / tau);
                constant += kept;
                full += kept * nearFull[i];
                empty += kept * nearEmpty[i];
                comesAndGoes += kept * reversible[i];
            }
        }

        /** Rise at the end, K, and the variance of what else is stated about the heat, K². */
        double[] end(double atFull, double atEmpty) {
            double more = 1 + atFull * nearFullNow + atEmpty * nearEmptyNow;
            double squareHeat = Math.max(0, line.slope() + line.height() / tau - reversibleNow) / more * square;
            double shape = constant + atFull * full + atEmpty * empty;
            double rise = line.height() * Math.exp(-ahead / tau) + squareHeat * becomes * shape + comesAndGoes;
            double changes = squareHeat * becomesLimits * shape;
            double table = REVERSIBLE * (comesAndGoes - reversibleNow / more * square * shape);
            double slope = line.slopeU() / more * square * shape;
            return new double[] {rise, (changes * changes + table * table) / 3 + slope * slope + LEAST_K * LEAST_K};
        }
    }
}
