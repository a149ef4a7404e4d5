package rigwarden.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Whether a tap sits on the bar instead of the stud: what the bar drops then goes to the cell below it and is missing from the cell
 * above, so that one reads as much more as the other reads less. A bad joint and a bad cell make one neighbour alone differ.
 */
final class TapPlace {
    /** Sound cells of one lot differ in resistance by so much, standard deviation, relative (project's assumption, as in {@link Joints}). */
    private static final double SPREAD = 0.05;
    private static final double OUT = 3.5;
    /** Each of the two must bear at least so much of their half difference. */
    private static final double BOTH = 0.5;
    private static final int LEAST = 4;

    private TapPlace() {}

    /** The pair of neighbours that differs most, where it differs by more than chance; of a family of four or more. */
    static Optional<String> of(List<Resistance> family) {
        List<Resistance> cells = family.stream().sorted(Comparator.comparingInt(Resistance::cell)).toList();
        if (cells.size() < LEAST) {
            return Optional.empty();
        }
        double[] sorted = cells.stream().mapToDouble(Resistance::ohms).sorted().toArray();
        double middle = sorted[sorted.length / 2];
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i + 1 < cells.size(); i++) {
            pairs.add(new Pair(cells.get(i), cells.get(i + 1)));
        }
        return pairs.stream().filter(pair -> pair.out(middle)).max(Comparator.comparingDouble(pair -> Math.abs(pair.half()))).map(Pair::say);
    }

    /** Two neighbours with one tap between them. */
    private record Pair(Resistance lower, Resistance upper) {
        double half() {
            return (lower.ohms() - upper.ohms()) / 2;
        }

        boolean out(double middle) {
            double u = Math.hypot(lower.budget().combined(), upper.budget().combined()) / 2;
            double chance = OUT * Math.hypot(SPREAD * middle / Math.sqrt(2), u);
            double sign = Math.signum(half());
            boolean both = sign * (lower.ohms() - middle) > BOTH * Math.abs(half()) && sign * (middle - upper.ohms()) > BOTH * Math.abs(half());
            return both && Math.abs(half()) > chance;
        }

        String say() {
            return Words.say("cells %d and %d read %.3f mΩ more and less than their likes, as where the tap between them sits on the bar instead of the"
                    + " stud", (half() > 0 ? lower : upper).cell(), (half() > 0 ? upper : lower).cell(), 1000 * Math.abs(half()));
        }
    }
}
