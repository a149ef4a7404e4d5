package rigwarden.findings.trace;

import java.util.List;

/**
 * A step of the current, and what the cells did in it.
 *
 * @param step number of the programme's step in which it came
 * @param kind word of that step
 * @param scan first scan with the new current
 * @param before just before it: amperes, and volts by cell from a line through the rows before; volts are NaN where not read
 * @param noiseVolts standard deviation of the voltage readings around those lines, by cell
 * @param freedom degrees of freedom of that scatter, from 2
 * @param after so long after it
 * @param fallVoltsPerSecond slope of the cells just before, V/s
 * @param trail the first rows with the new current, the first of all included, each with its own time
 */
public record Edge(int step, String kind, long scan, Moment before, double[] noiseVolts, int freedom, List<Moment> after,
        double[] fallVoltsPerSecond, List<Moment> trail) {
    /** The delays at which the cells are looked at, s. */
    static final double[] DELAYS = {0.1, 1, 10};

    /**
     * An instant.
     *
     * @param seconds after the first row with the new current; 0 before it
     * @param nominalSeconds the delay that it stands for
     * @param amps current, positive into the cells
     * @param volts by cell
     */
    public record Moment(double seconds, double nominalSeconds, double amps, double[] volts) {}

    /** The same with so many scans counted before it. */
    public Edge counted(long scansBefore) {
        return new Edge(step, kind, scan + scansBefore, before, noiseVolts, freedom, after, fallVoltsPerSecond, trail);
    }

    /**
     * How unsure the line through the rows before is one row beyond them, in standard deviations of one row: of n equal distances
     * √(1/n + 3 (n + 1)/(n (n − 1))).
     */
    public double extrapolation() {
        double rows = freedom + 2.0;
        return Math.sqrt(1 / rows + 3 * (rows + 1) / (rows * (rows - 1)));
    }

    /** Whether the current stopped. */
    public boolean opened() {
        return !after.isEmpty() && Math.abs(after.getFirst().amps()) < 0.02 * Math.abs(before.amps());
    }

    /** Whether it became greater in the same direction. */
    public boolean rose() {
        return !after.isEmpty() && Math.abs(before.amps()) > 1 && after.getFirst().amps() / before.amps() > 1.05;
    }
}
