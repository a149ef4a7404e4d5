package rigwarden.prove;

/**
 * What a sound channel may be off by. A stated uncertainty is that of about 95 of 100; a proof must pass every sound rig, so it
 * allows what remains when each of up to three equal terms stands at its own limit.
 */
final class Limit {
    /** n equal rectangular terms at their limits, over their expanded sum: √n · √3 / 2. */
    private static final double THREE_AT_THE_EDGE = 1.5;

    private Limit() {}

    /** Of one channel with this expanded uncertainty, in its unit. */
    static double alone(double expanded) {
        return THREE_AT_THE_EDGE * expanded;
    }

    /** Of the difference of channels that err independently: all at their edges, against each other. */
    static double together(double... expanded) {
        double sum = 0;
        for (double one : expanded) {
            sum += one;
        }
        return THREE_AT_THE_EDGE * sum;
    }
}
