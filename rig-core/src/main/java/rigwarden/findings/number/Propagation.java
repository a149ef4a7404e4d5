package rigwarden.findings.number;

import java.util.function.Function;
import java.util.stream.IntStream;
import org.hipparchus.analysis.differentiation.Gradient;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;

/**
 * The law of propagation for several results of several inputs, correlations kept (JCGM 100:2008, 5.2, and JCGM 102:2011,
 * 6.2): the results' values and their covariance.
 *
 * @param values of the results
 * @param covariance of the results
 */
public record Propagation(double[] values, double[][] covariance) {
    /**
     * Puts inputs through a function.
     *
     * @param inputs best estimates
     * @param covariance of the inputs: squares of standard uncertainties on the diagonal
     * @param results what is made of them
     */
    public static Propagation of(double[] inputs, double[][] covariance, Function<Gradient[], Gradient[]> results) {
        Gradient[] variables = IntStream.range(0, inputs.length)
                .mapToObj(i -> Gradient.variable(inputs.length, i, inputs[i])).toArray(Gradient[]::new);
        Gradient[] made = results.apply(variables);
        double[] values = new double[made.length];
        double[][] sensitivity = new double[made.length][];
        for (int i = 0; i < made.length; i++) {
            values[i] = made[i].getValue();
            sensitivity[i] = made[i].getGradient();
        }
        RealMatrix c = new Array2DRowRealMatrix(sensitivity, false);
        return new Propagation(values,
                c.multiply(new Array2DRowRealMatrix(covariance, true)).multiplyTransposed(c).getData());
    }

    /** The covariance of inputs from their standard uncertainties and correlations. */
    public static double[][] covariance(double[] standard, double[][] correlation) {
        double[][] made = new double[standard.length][standard.length];
        for (int i = 0; i < standard.length; i++) {
            for (int j = 0; j < standard.length; j++) {
                made[i][j] = standard[i] * standard[j] * (i == j ? 1 : correlation[i][j]);
            }
        }
        return made;
    }

    /** Standard uncertainty of a result. */
    public double standard(int result) {
        return Math.sqrt(covariance[result][result]);
    }

    /** Correlation of two results. */
    public double correlation(int one, int other) {
        return covariance[one][other] / (standard(one) * standard(other));
    }
}
