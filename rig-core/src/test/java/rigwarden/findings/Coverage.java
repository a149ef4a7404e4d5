package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/** Counts, by what was measured, how often the truth lay inside the stated uncertainty, and how tight that was. */
final class Coverage {
    private final Map<String, List<double[]>> byWhat = new LinkedHashMap<>();

    /** One measurement: its value, what it says it may be wrong by, and the truth. */
    synchronized void add(String what, double value, double expanded, double truth) {
        byWhat.computeIfAbsent(what, _ -> new ArrayList<>()).add(new double[] {value - truth, expanded, truth});
    }

    /**
     * What came of one kind of measurement.
     *
     * @param what it was
     * @param of how many
     * @param inside how many had the truth inside
     * @param least as many an exact binomial test at 1 % demands of 95.45 %
     * @param tightness median of the stated uncertainty over the 95 % quantile of the errors seen
     * @param expanded median of the stated uncertainty
     */
    record Line(String what, int of, long inside, int least, double tightness, double expanded) {
        boolean honest() {
            return inside >= least;
        }

        String print() {
            return String.format(Locale.ROOT, "%-44s %5d, inside %5d (%.1f %%, at least %d), U %.5f, U ÷ 95 %% of errors %.2f", what, of,
                    inside, 100.0 * inside / of, least, expanded, tightness);
        }
    }

    List<Line> lines() {
        return byWhat.entrySet().stream().map(e -> line(e.getKey(), e.getValue())).toList();
    }

    private static Line line(String what, List<double[]> all) {
        long inside = all.stream().filter(m -> Math.abs(m[0]) <= m[1]).count();
        double[] errors = all.stream().mapToDouble(m -> Math.abs(m[0])).sorted().toArray();
        double[] stated = all.stream().mapToDouble(m -> m[1]).sorted().toArray();
        double quantile = errors[(int) Math.ceil(0.95 * errors.length) - 1];
        return new Line(what, all.size(), inside, least(all.size()), stated[stated.length / 2] / quantile, stated[stated.length / 2]);
    }

    /** The smallest count that a true coverage of 95.45 % does not miss with more than 1 %. */
    static int least(int of) {
        BinomialDistribution honest = new BinomialDistribution(of, Budget.COVERAGE);
        int count = of;
        while (count > 0 && honest.cumulativeProbability(count - 1) > 0.01) {
            count--;
        }
        return count;
    }

    static double median(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
