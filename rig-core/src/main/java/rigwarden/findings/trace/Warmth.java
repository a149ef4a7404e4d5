package rigwarden.findings.trace;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import rigwarden.rig.Channel;

/**
 * A place's temperature over a step, thinned to a bounded number of points, each with its own time.
 *
 * @param where its channel
 * @param atRestCelsius its reading when the step began, before any current of the step warmed it; NaN if it had none
 * @param hours mean time of the rows of each point, since the step began
 * @param celsius at those times
 * @param amps mean current up to each point since the one before, A, signed
 * @param squareAmps mean of the current's square up to each point since the one before, A²
 */
public record Warmth(Channel where, double atRestCelsius, double[] hours, double[] celsius, double[] amps,
        double[] squareAmps) {
    /** Of a step that was broken off and went on so: with the points of the first part, and those of the second so much later. */
    public Warmth then(Warmth after, double laterHours) {
        return new Warmth(where, atRestCelsius, both(hours, Arrays.stream(after.hours).map(hour -> hour + laterHours).toArray()),
                both(celsius, after.celsius), both(amps, after.amps), both(squareAmps, after.squareAmps));
    }

    private static double[] both(double[] first, double[] second) {
        return DoubleStream.concat(Arrays.stream(first), Arrays.stream(second)).toArray();
    }

    /** The same points, over what the place had when the step first began. */
    public Warmth since(Warmth before) {
        return new Warmth(where, before.atRestCelsius, hours, celsius, amps, squareAmps);
    }

    /** Only the points up to a time, as they were known then. */
    public Warmth until(double hour) {
        int points = 0;
        while (points < hours.length && hours[points] <= hour) {
            points++;
        }
        return new Warmth(where, atRestCelsius, Arrays.copyOf(hours, points), Arrays.copyOf(celsius, points),
                Arrays.copyOf(amps, points), Arrays.copyOf(squareAmps, points));
    }
}
