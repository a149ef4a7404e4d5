package rigwarden.findings.number;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/**
 * A straight line y = height + slope (x − from) by least squares, with the covariance of both (JCGM 100:2008, H.3).
 *
 * @param from place at which the height is told, in the unit of x
 * @param height y at that place
 * @param slope y per x
 * @param heightU standard uncertainty of the height
 * @param slopeU standard uncertainty of the slope
 * @param correlation of height and slope, −1…1
 * @param residual standard deviation of the residuals; of a weighted line in units of the stated uncertainties
 * @param freedom degrees of freedom, at least 1
 */
public record StraightLine(double from, double height, double slope, double heightU, double slopeU, double correlation,
        double residual, int freedom) {

    /** A value with its standard uncertainty. */
    public record Height(double value, double standard, int freedom) {}

    /**
     * Through points that are known equally well, their scatter taken from themselves.
     *
     * @throws IllegalArgumentException for fewer than three points, or points above one another only
     */
    public static StraightLine through(double[] x, double[] y, double from) {
        double[] same = new double[x.length];
        Arrays.fill(same, 1);
        return fit(x, y, same, from, true);
    }

    /**
     * Through points with their own standard uncertainties, which are believed: the scatter does not change the result's.
     *
     * @param standard of each y, above 0
     */
    public static StraightLine weighted(double[] x, double[] y, double[] standard, double from) {
        return fit(x, y, standard, from, false);
    }

    private static StraightLine fit(double[] x, double[] y, double[] standard, double from, boolean byScatter) {
        if (x.length < 3 || x.length != y.length || x.length != standard.length) {
            throw new IllegalArgumentException("a line with its uncertainty needs three points, there are " + x.length);
        }
        double[][] rows = new double[x.length][];
        double[] heights = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            if (!(standard[i] > 0)) {
                throw new IllegalArgumentException("not an uncertainty: " + standard[i]);
            }
            rows[i] = new double[] {1 / standard[i], (x[i] - from) / standard[i]};
            heights[i] = y[i] / standard[i];
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.setNoIntercept(true);
        regression.newSampleData(heights, rows);
        double[] found = regression.estimateRegressionParameters();
        RealMatrix inverse = new Array2DRowRealMatrix(regression.estimateRegressionParametersVariance());
        double scatter = Math.sqrt(regression.calculateResidualSumOfSquares() / (x.length - 2));
        double times = byScatter ? scatter : 1;
        double heightU = times * Math.sqrt(inverse.getEntry(0, 0));
        double slopeU = times * Math.sqrt(inverse.getEntry(1, 1));
        return new StraightLine(from, found[0], found[1], heightU, slopeU,
                inverse.getEntry(0, 1) / Math.sqrt(inverse.getEntry(0, 0) * inverse.getEntry(1, 1)), scatter, x.length - 2);
    }

    /** The line's height at x; height and slope are correlated, and that counts. */
    public Height at(double x) {
        double away = x - from;
        double variance = heightU * heightU + away * away * slopeU * slopeU + 2 * away * correlation * heightU * slopeU;
        return new Height(height + slope * away, Math.sqrt(Math.max(0, variance)), freedom);
    }
}
