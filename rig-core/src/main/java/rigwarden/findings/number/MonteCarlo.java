package rigwarden.findings.number;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;

/**
 * Propagation of distributions by random draws (JCGM 101:2008, clause 7).
 *
 * @param sorted the results drawn, ascending
 */
public record MonteCarlo(double[] sorted) {
    /**
     * Draws.
     *
     * @param seed fixed beforehand, so that anyone gets the same
     * @param trials how many
     * @param result one draw of the result: draws its inputs from the generator
     */
    public static MonteCarlo draw(long seed, int trials, ToDoubleFunction<RandomGenerator> result) {
        RandomGenerator chance = new Well19937c(seed);
        double[] drawn = new double[trials];
        for (int i = 0; i < trials; i++) {
            drawn[i] = result.applyAsDouble(chance);
        }
        Arrays.sort(drawn);
        return new MonteCarlo(drawn);
    }

    /** An interval of the result. */
    public record Interval(double low, double high) {}

    /** A draw from a rectangular distribution between two limits. */
    public static double between(RandomGenerator chance, double low, double high) {
        return low + (high - low) * chance.nextDouble();
    }

    public double mean() {
        return Arrays.stream(sorted).sum() / sorted.length;
    }

    /** Standard uncertainty. */
    public double standard() {
        double mean = mean();
        return Math.sqrt(Arrays.stream(sorted).map(v -> (v - mean) * (v - mean)).sum() / (sorted.length - 1));
    }

    /** The interval that leaves as much on either side (7.7.2). */
    public Interval symmetric(double coverage) {
        int inside = inside(coverage);
        int below = (sorted.length - inside) / 2;
        return new Interval(sorted[below], sorted[below + inside]);
    }

    /** The shortest interval (7.7.3, note 2). */
    public Interval shortest(double coverage) {
        int inside = inside(coverage);
        int best = 0;
        for (int i = 0; i + inside < sorted.length; i++) {
            if (sorted[i + inside] - sorted[i] < sorted[best + inside] - sorted[best]) {
                best = i;
            }
        }
        return new Interval(sorted[best], sorted[best + inside]);
    }

    private int inside(double coverage) {
        return (int) Math.min(Math.round(coverage * sorted.length), sorted.length - 1L);
    }
}
