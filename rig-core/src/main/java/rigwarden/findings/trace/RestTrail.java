package rigwarden.findings.trace;

/**
 * How the cells' voltages went in a rest, hourly.
 *
 * @param hours mean time of the rows of each point, since the rest began; at most {@link #MOST} of them, later ones are thinned by half
 * @param volts by cell and hour
 */
public record RestTrail(double[] hours, double[][] volts) {
    static final int MOST = 1024;
}
