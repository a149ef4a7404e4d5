package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rigwarden.findings.trace.Edge;
import rigwarden.rig.Traced;

/**
 * Which joint is out of family. Between two taps lie a cell and the joint below it, and the voltage alone cannot tell them
 * apart: a joint is named alone only when a hand meter or its own warmth says so too, a cell never.
 */
public final class Joints {
    /** Sound cells of one lot differ in resistance by so much, standard deviation, relative (project's assumption). */
    private static final double SPREAD = 0.05;
    /** Warmth tells a joint from so many likes. */
    private static final int WARM_LIKES = 3;
    /** A hand meter from so many: one that was read wrongly is not enough. */
    private static final int WALKED_LIKES = 2;

    private Joints() {}

    /**
     * Warmth of a joint over its cell at the end of a step, zeroed at rest.
     *
     * @param lowerCell the joint is between this cell and the next
     * @param kelvin over the mean of its two cells
     * @param expandedKelvin what that may be wrong by
     */
    public record Warm(int lowerCell, double kelvin, double expandedKelvin) {}

    /**
     * A hand meter's reading on one joint.
     *
     * @param lowerCell the joint is between this cell and the next
     * @param volts read, under the current
     * @param amps in the scan of the reading
     * @param expandedVolts what the meter may be wrong by
     */
    public record Walked(int lowerCell, double volts, double amps, double expandedVolts) {
        double ohms() {
            return Math.abs(volts / amps);
        }

        double standardOhms() {
            return Math.abs(expandedVolts / amps) / 2;
        }
    }

    /** Between these rest voltages a cell is on its flat, and its resistance hardly depends on how full it is, V. */
    private static final double FLAT_FROM_VOLTS = 3.15;
    private static final double FLAT_TO_VOLTS = 3.38;

    /**
     * Resistance between the taps of each cell from every stop of the current on the flat, the earliest delay, as means weighted
     * by the square of the current: towards either end a cell that is only emptier than its likes would look bad.
     */
    static List<Resistance> onTheFlat(Traced rig, List<Edge> edges) {
        int cells = rig.cells().series();
        double[] sum = new double[cells];
        List<Map<String, Budget.Term>> squares = new ArrayList<>();
        double[] weight = new double[cells];
        Resistance[] last = new Resistance[cells];
        for (int cell = 0; cell < cells; cell++) {
            squares.add(new LinkedHashMap<>());
        }
        for (Edge edge : edges) {
            if (!edge.opened() || !flat(edge.after().getLast().volts())) {
                continue;
            }
            double shortest = edge.after().getFirst().seconds();
            double square = edge.before().amps() * edge.before().amps();
            for (Resistance r : Resistance.atOpening(rig, edge)) {
                if (r.seconds() == shortest) {
                    int cell = r.cell() - 1;
                    sum[cell] += square * r.ohms();
                    r.budget().terms().forEach(t -> squares.get(cell).merge(t.name(), t.sized(square * t.standard() * t.standard()),
                            (a, b) -> a.sized(a.standard() + b.standard())));
                    weight[cell] += square;
                    last[cell] = r;
                }
            }
        }
        List<Resistance> means = new ArrayList<>();
        for (int cell = 0; cell < cells; cell++) {
            if (last[cell] != null) {
                means.add(new Resistance(cell + 1, last[cell].how(), last[cell].seconds(), sum[cell] / weight[cell], last[cell].amps(),
                        new Budget(mean(squares.get(cell), weight[cell])), last[cell].scan()));
            }
        }
        return means;
    }

    /** Term by term, so that what errs alike in two runs can be told from what does not. */
    private static List<Budget.Term> mean(Map<String, Budget.Term> squares, double weight) {
        return squares.values().stream().map(t -> Budget.standard(t.nature(), t.name(), Math.sqrt(t.standard() / weight))).toList();
    }

    private static boolean flat(double[] volts) {
        return Arrays.stream(volts).allMatch(v -> v > FLAT_FROM_VOLTS && v < FLAT_TO_VOLTS);
    }

    /** Ranked by voltage, the highest first. */
    static List<Resistance> ranked(List<Resistance> cells) {
        return cells.stream().sorted(Comparator.comparingDouble(Resistance::ohms).reversed()).toList();
    }

    /** What is out of family; empty when nothing is. */
    public static Optional<Answer> outOfFamily(List<Resistance> cells, List<Warm> warm, List<Walked> walked) {
        List<Resistance> ranked = ranked(cells);
        if (ranked.size() < 4) {
            return Optional.of(new Answer.Refused("a family needs four like places, there are " + ranked.size()));
        }
        Resistance top = ranked.getFirst();
        Likes others = Likes.of(ranked.stream().skip(1).mapToDouble(Resistance::ohms).toArray(), SPREAD, 0);
        if (!others.below(top.ohms(), top.budget().combined())) {
            return Optional.empty();
        }
        int cell = top.cell();
        String seen = Words.say("%.3f mΩ between its taps, its likes have %.3f mΩ", top.ohms() * 1000, others.middle() * 1000);
        if (cell == 1) {
            return Optional.of(new Answer.CannotTell("cell 1 or its lower terminal", seen));
        }
        return Optional.of(named(cell, top.ohms() - others.middle(), warm, walked, seen));
    }

    private static Answer named(int cell, double excess, List<Warm> warm, List<Walked> walked, String seen) {
        int lower = cell - 1;
        String joint = Words.say("the joint between cells %d and %d", lower, cell);
        Optional<ByHand> hand = byHand(lower, walked);
        if (hand.isPresent() && hand.get().more() - hand.get().expanded() > excess / 2) {
            return new Answer.Named(joint, Words.say("%s; the hand meter reads %.3f mΩ on the joint itself, on its likes %.3f mΩ", seen,
                    1000 * hand.get().ohms(), 1000 * hand.get().likes()));
        }
        Map<Integer, Warm> family = new TreeMap<>();
        warm.forEach(w -> family.put(w.lowerCell(), w));
        Warm own = family.remove(lower);
        if (own != null && family.size() >= WARM_LIKES) {
            Likes likes = Likes.byWarmth(family.values().stream().mapToDouble(Warm::kelvin).toArray());
            if (likes.below(own.kelvin(), own.expandedKelvin() / 2)) {
                return new Answer.Named(joint, Words.say("%s; and it is %.1f K over its cells, its likes %.1f K", seen, own.kelvin(),
                        likes.middle()));
            }
        }
        return new Answer.CannotTell(Words.say("cell %d or %s", cell, joint), seen + hand.map(found -> found.words(excess))
                .orElse(walked.stream().anyMatch(w -> w.lowerCell() == lower)
                        ? "; the hand meter must be held on two of its likes too"
                        : "; a hand meter on the joint and on its likes, or a tap on either side of it, would tell"));
    }

    /** What a hand meter reads on a joint, on its likes, and how much the joint has more, all in Ω. */
    private record ByHand(double ohms, double likes, double more, double expanded) {
        String words(double excess) {
            return Words.say("; the hand meter reads %.3f mΩ on the joint and %.3f mΩ on its likes, which %s", 1000 * ohms, 1000 * likes,
                    more + expanded < excess / 2 ? "speaks for the cell" : "does not tell");
        }
    }

    private static Optional<ByHand> byHand(int lower, List<Walked> walked) {
        Optional<Walked> here = walked.stream().filter(w -> w.lowerCell() == lower).findFirst();
        double[] others = walked.stream().filter(w -> w.lowerCell() != lower).mapToDouble(Walked::ohms).toArray();
        if (here.isEmpty() || others.length < WALKED_LIKES) {
            return Optional.empty();
        }
        Likes likes = Likes.byHand(others);
        return here.map(own -> new ByHand(own.ohms(), likes.middle(), own.ohms() - likes.middle(),
                2 * Math.hypot(likes.spread(), own.standardOhms())));
    }

    /** Joints ranked by their warmth, the warmest first. */
    static List<Warm> rankedByHeat(List<Warm> warm) {
        List<Warm> ranked = new ArrayList<>(warm);
        ranked.sort(Comparator.comparingDouble(Warm::kelvin).reversed());
        return ranked;
    }
}
