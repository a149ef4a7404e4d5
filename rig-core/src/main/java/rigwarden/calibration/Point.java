package rigwarden.calibration;

/**
 * One point of a calibration.
 *
 * @param reads mean of the channel without any calibration, in its unit
 * @param scatter standard deviation of its readings, in its unit
 * @param scans readings that the mean is of, at least 2
 * @param shown what the reference meter showed meanwhile, in the meter's unit
 */
public record Point(double reads, double scatter, int scans, double shown) {
    public Point {
        if (!Double.isFinite(reads) || !(scatter >= 0) || scans < 2 || !Double.isFinite(shown)) {
            throw new IllegalArgumentException("not a point: reads " + reads + " ± " + scatter + " of " + scans + ", shown " + shown);
        }
    }
}
