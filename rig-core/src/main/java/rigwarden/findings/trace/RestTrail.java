package rigwarden.findings.trace;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * How the cells' voltages went in a rest, hourly.
 *
 * @param hours mean time of the rows of each point, since the rest began; at most {@link #MOST} of each part of it, later ones are thinned by half
 * @param volts by cell and hour
 */
public record RestTrail(double[] hours, double[][] volts) {
    static final int MOST = 1024;

    /** Of a rest that was broken off and went on so: the second part's points so much later. */
    public RestTrail then(RestTrail after, double laterHours) {
        return new RestTrail(both(hours, Arrays.stream(after.hours).map(hour -> hour + laterHours).toArray()),
                IntStream.range(0, volts.length).mapToObj(cell -> both(volts[cell], after.volts[cell])).toArray(double[][]::new));
    }

    private static double[] both(double[] first, double[] second) {
        return DoubleStream.concat(Arrays.stream(first), Arrays.stream(second)).toArray();
    }
}
