package rigwarden.calibration;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A straight line by weighted least squares (JCGM 100:2008, H.3). It is told about its pivot, the weighted mean of x, where
 * height and slope err independently; seen from any other place they are correlated.
 *
 * @param pivot in the unit of x
 * @param height y at the pivot
 * @param slope y per x
 * @param heightU standard uncertainty of the height
 * @param slopeU standard uncertainty of the slope
 * @param chiSquare sum of the squares of what each point is off the line by, in its own standard uncertainties
 * @param points that it was drawn through
 */
public record LineFit(double pivot, double height, double slope, double heightU, double slopeU, double chiSquare, int points) {

    /**
     * The line through points whose y is known to a standard uncertainty each, which is believed.
     *
     * @param standard of each y, above 0
     * @throws IllegalArgumentException for fewer than two points, or points above one another only
     */
    public static LineFit through(double[] x, double[] y, double[] standard) {
        double weights = 0;
        double pivot = 0;
        for (int i = 0; i < x.length; i++) {
            double weight = 1 / (standard[i] * standard[i]);
            weights += weight;
            pivot += weight * x[i];
        }
        pivot /= weights;
        double spread = 0;
        RealMatrix rows = new Array2DRowRealMatrix(Math.max(1, x.length), 2);
        RealVector heights = new ArrayRealVector(Math.max(1, x.length));
        for (int i = 0; i < x.length; i++) {
            rows.setRow(i, new double[] {1 / standard[i], (x[i] - pivot) / standard[i]});
            heights.setEntry(i, y[i] / standard[i]);
            spread = Math.max(spread, Math.abs(x[i] - pivot));
        }
        if (x.length < 2 || !(spread > 0)) {
            throw new IllegalArgumentException("a line needs two points apart");
        }
        RealVector found = new QRDecomposition(rows).getSolver().solve(heights);
        double off = rows.operate(found).getDistance(heights);
        RealMatrix normal = rows.transposeMultiply(rows);
        return new LineFit(pivot, found.getEntry(0), found.getEntry(1), Math.sqrt(1 / normal.getEntry(0, 0)),
                Math.sqrt(1 / normal.getEntry(1, 1)), off * off, x.length);
    }

    /** Degrees of freedom; 0 for two points. */
    public int freedom() {
        return points - 2;
    }

    /** What the points scatter by, in their own standard uncertainties; 1 where two points say nothing about it. */
    public double scatter() {
        return freedom() == 0 ? 1 : Math.sqrt(chiSquare / freedom());
    }

    /** The same line, its uncertainties times a factor. */
    public LineFit widened(double factor) {
        return new LineFit(pivot, height, slope, heightU * factor, slopeU * factor, chiSquare, points);
    }

    /** Height of the line at x. */
    public double at(double x) {
        return height + slope * (x - pivot);
    }

    /** Standard uncertainty of that height. */
    public double standardAt(double x) {
        return Math.hypot(heightU, slopeU * (x - pivot));
    }

    /** Correlation of the slope and the height at x, −1…1. */
    public double correlationAt(double x) {
        return (x - pivot) * slopeU / standardAt(x);
    }
}
