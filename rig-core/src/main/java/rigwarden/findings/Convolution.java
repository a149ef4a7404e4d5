package rigwarden.findings;

import java.util.List;

/**
 * Half width of the symmetric interval that a sum of independent terms, normal and rectangular, fills with a probability:
 * the distributions themselves are folded, on a grid (JCGM 101:2008, 5.3, by numbers instead of random draws). Twice the
 * standard uncertainty would cover far more than it says where one rectangular term dominates.
 */
final class Convolution {
    private static final int POINTS = 4001;
    private static final double TAILS = 5;

    private Convolution() {}

    /**
     * The half width.
     *
     * @param terms their degrees of freedom are taken as infinite
     * @param coverage probability, for example 0.9545
     */
    static double halfWidth(List<Budget.Term> terms, double coverage) {
        Folded folded = folded(terms);
        return folded.step() == 0 ? 0 : within(folded.density(), coverage) * folded.step();
    }

    /** Probability that the sum is not more than this. */
    static double below(List<Budget.Term> terms, double deviation) {
        Folded folded = folded(terms);
        if (folded.step() == 0) {
            return deviation >= 0 ? 1 : 0;
        }
        double[] sum = summed(folded.density());
        int middle = POINTS / 2;
        return at(sum, middle + 0.5 + deviation / folded.step()) / sum[POINTS];
    }

    /** The distribution of the sum: on a grid around zero, so many units of the result from point to point; 0 where nothing is uncertain. */
    private record Folded(double[] density, double step) {}

    private static Folded folded(List<Budget.Term> terms) {
        double reach = 0;
        double variance = 0;
        for (Budget.Term term : terms) {
            reach += term.rectangular() ? term.halfWidth() : 0;
            variance += term.rectangular() ? 0 : term.standard() * term.standard();
        }
        double step = 2 * (reach + TAILS * Math.sqrt(variance)) / (POINTS - 1);
        if (step == 0) {
            return new Folded(new double[0], 0);
        }
        for (Budget.Term term : terms) {
            boolean fine = term.rectangular() && term.halfWidth() < 2 * step;
            variance += fine ? term.standard() * term.standard() : 0;
        }
        double[] density = normal(Math.max(Math.sqrt(variance), step), step);
        for (Budget.Term term : terms) {
            if (term.rectangular() && term.halfWidth() >= 2 * step) {
                density = smeared(density, term.halfWidth() / step);
            }
        }
        return new Folded(density, step);
    }

    private static double[] normal(double sigma, double step) {
        double[] density = new double[POINTS];
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double z = (i - POINTS / 2) * step / sigma;
            density[i] = Math.exp(-z * z / 2);
            sum += density[i];
        }
        for (int i = 0; i < POINTS; i++) {
            density[i] /= sum;
        }
        return density;
    }

    /** Folded with a rectangle of this half width, in steps. */
    private static double[] smeared(double[] density, double half) {
        double[] sum = summed(density);
        double[] result = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            result[i] = (at(sum, i + 0.5 + half) - at(sum, i + 0.5 - half)) / (2 * half);
        }
        return result;
    }

    /** Of all points before each place, and of all. */
    private static double[] summed(double[] density) {
        double[] sum = new double[POINTS + 1];
        for (int i = 0; i < POINTS; i++) {
            sum[i + 1] = sum[i] + density[i];
        }
        return sum;
    }

    private static double at(double[] sum, double place) {
        double inside = Math.clamp(place, 0, POINTS);
        int below = Math.min((int) inside, POINTS - 1);
        return sum[below] + (inside - below) * (sum[below + 1] - sum[below]);
    }

    /** Steps from the middle within which so much lies. */
    private static double within(double[] density, double coverage) {
        double total = 0;
        for (double d : density) {
            total += d;
        }
        double wanted = coverage * total;
        int middle = POINTS / 2;
        double found = density[middle];
        for (int i = 1; i <= middle; i++) {
            double more = density[middle - i] + density[middle + i];
            if (found + more >= wanted) {
                return i - 0.5 + (wanted - found) / more;
            }
            found += more;
        }
        return middle;
    }
}
