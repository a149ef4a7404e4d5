package rigwarden.findings;

import java.util.Arrays;

/**
 * What one place is held against: the middle of its likes, and how much sound ones differ among themselves.
 *
 * @param middle their median, in their unit
 * @param spread standard deviation among them: what is assumed of sound ones, or what they show where that is more
 */
record Likes(double middle, double spread) {
    /** So many standard deviations make one out of family. */
    static final double OUT = 3.5;
    /** Sound joints of one make differ by so much, standard deviation, relative, by warmth in K besides (project's assumption). */
    private static final double JOINTS = 0.15;
    private static final double JOINTS_K = 0.3;
    /** Of half of a normal distribution, its standard deviation. */
    private static final double NORMAL = 1.4826;

    /**
     * Of values of likes.
     *
     * @param values one at least
     * @param relative standard deviation of sound ones, of their middle
     * @param least the same, in their unit
     */
    static Likes of(double[] values, double relative, double least) {
        double middle = median(values);
        double scatter = NORMAL * median(Arrays.stream(values).map(v -> Math.abs(v - middle)).toArray());
        return new Likes(middle, Math.max(Math.max(relative * Math.abs(middle), least), scatter));
    }

    /** Of joints' rises over their cells, K. */
    static Likes byWarmth(double[] kelvin) {
        return of(kelvin, JOINTS, JOINTS_K);
    }

    /** Of joints' resistances, Ω. */
    static Likes byHand(double[] ohms) {
        return of(ohms, JOINTS, 0);
    }

    /** Whether a value lies above its likes by more than chance and its own doubt explain. */
    boolean below(double value, double standard) {
        return value - middle > OUT * Math.hypot(spread, standard);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
