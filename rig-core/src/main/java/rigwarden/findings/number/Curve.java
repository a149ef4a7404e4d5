package rigwarden.findings.number;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.hipparchus.analysis.differentiation.Gradient;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;

/** A curve with some parameters, put through points by least squares; its derivatives are exact, not differences. */
@FunctionalInterface
public interface Curve {
    /** The curve's height at x. */
    Gradient at(double x, Gradient[] parameters);

    /**
     * A curve that fits.
     *
     * @param parameters in the curve's order
     * @param covariance of the parameters, the scatter taken from the points
     * @param squares sum of the squares of the residuals
     * @param freedom degrees of freedom
     */
    record Fit(double[] parameters, double[][] covariance, double squares, int freedom) {
        /** Standard uncertainty of a parameter. */
        public double standard(int parameter) {
            return Math.sqrt(covariance[parameter][parameter]);
        }

        /** Standard deviation of the residuals. */
        public double residual() {
            return Math.sqrt(squares / freedom);
        }
    }

    /**
     * The best parameters, searched from a start.
     *
     * @throws org.hipparchus.exception.MathIllegalStateException when no minimum is found from there
     */
    default Fit through(double[] x, double[] y, double... start) {
        double[] ones = new double[x.length];
        Arrays.fill(ones, 1);
        Optimum best = new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(1e-15)
                .withParameterRelativeTolerance(1e-14)
                .withOrthoTolerance(1e-15)
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .model(jacobian(x))
                        .target(y)
                        .weight(new DiagonalMatrix(ones))
                        .lazyEvaluation(false)
                        .maxEvaluations(100_000)
                        .maxIterations(100_000)
                        .checker((_, _, _) -> false)
                        .build());
        int freedom = x.length - start.length;
        double squares = best.getResiduals().dotProduct(best.getResiduals());
        double[][] covariance = best.getCovariances(1e-30).scalarMultiply(squares / freedom).getData();
        return new Fit(best.getPoint().toArray(), covariance, squares, freedom);
    }

    private MultivariateJacobianFunction jacobian(double[] x) {
        return point -> {
            int free = point.getDimension();
            Gradient[] parameters = IntStream.range(0, free)
                    .mapToObj(i -> Gradient.variable(free, i, point.getEntry(i))).toArray(Gradient[]::new);
            double[] heights = new double[x.length];
            double[][] slopes = new double[x.length][];
            for (int i = 0; i < x.length; i++) {
                Gradient height = at(x[i], parameters);
                heights[i] = height.getValue();
                slopes[i] = height.getGradient();
            }
            return new Pair<>(new ArrayRealVector(heights, false), new Array2DRowRealMatrix(slopes, false));
        };
    }
}
