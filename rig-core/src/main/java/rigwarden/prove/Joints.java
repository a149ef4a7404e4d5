package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.JOINT;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import rigwarden.program.Step.Element;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * A look at every joint at the small currents of a proof. Where the current drops at once, each cell's step in volts over the step in
 * amperes is the resistance between its taps: the cell, the bar below it and its joints. Several drops are weighed by the square of their step.
 */
final class Joints {
    private static final int BEFORE = 10;
    private static final int AFTER = 5;
    private static final int KEPT = 40;
    /** A smaller step says nothing, A. */
    private static final double LEAST_STEP_A = 1;
    private static final double SURE = 3;
    /** Sound cells of one lot, with sound joints, lie within a tenth of the middle of their likes; twice that is told. Common practice, no source. */
    private static final double FAMILY_SHARE = 0.20;
    /** A lead that sits on the bar gives one cell what it takes from the next: half of that is enough to be told. */
    private static final double PAIR_SHARE = 0.12;

    private final Rig rig;
    private final Channel current;
    private final List<Channel> cells;
    private final WayOhms way;
    private final Deque<Scan> kept = new ArrayDeque<>();
    private final double[] product;
    private final double[] variance;
    private double squares;

    Joints(Rig rig) {
        this.rig = rig;
        current = rig.channel(Role.CURRENT);
        cells = rig.channels(Role.CELL_VOLTS);
        way = new WayOhms(rig);
        product = new double[cells.size()];
        variance = new double[cells.size()];
    }

    void take(Scan scan) {
        kept.addLast(scan);
        if (kept.size() > KEPT) {
            kept.removeFirst();
        }
    }

    /** The current is gone since the last {@value #AFTER} scans, which it was so many seconds after the order to open this. */
    void stopped(Element opened, double seconds) {
        List<Scan> scans = new ArrayList<>(kept);
        int gone = scans.size() - AFTER;
        if (gone < 1) {
            return;
        }
        long ordered = scans.get(gone).nanos() - Math.round(seconds * 1e9);
        List<Scan> flowing = scans.subList(0, gone).stream().filter(s -> s.nanos() <= ordered).toList();
        if (flowing.size() < 2) {
            return;
        }
        Means before = means(flowing.subList(Math.max(0, flowing.size() - BEFORE), flowing.size()));
        Means after = means(scans.subList(gone, scans.size()));
        if (add(before, after) && opened == Element.RELAY) {
            way.add(before, after);
        }
    }

    private Means means(List<Scan> scans) {
        Means means = new Means(rig);
        scans.forEach(means::take);
        return means;
    }

    private boolean add(Means before, Means after) {
        double amps = before.mean(current) - after.mean(current);
        boolean whole = cells.stream().allMatch(c -> before.seen(c) && after.seen(c));
        if (!whole || !(Math.abs(amps) >= LEAST_STEP_A)) {
            return false;
        }
        squares += amps * amps;
        for (int k = 0; k < cells.size(); k++) {
            double volts = before.mean(cells.get(k)) - after.mean(cells.get(k));
            product[k] += amps * volts;
            double standard = Math.hypot(Math.hypot(before.standard(cells.get(k)), after.standard(cells.get(k))), resolution(cells.get(k)));
            variance[k] += amps * amps * standard * standard;
        }
        return true;
    }

    /** Of a step between two readings of the taps beside a cell, V: a code that does not move hides this much. */
    private double resolution(Channel cell) {
        double squares = 0;
        for (Channel tap : rig.channels()) {
            boolean beside = tap.role() == Role.TAP_VOLTS && (tap.cell() == cell.cell() || tap.cell() == cell.cell() - 1);
            squares += beside || tap == cell && rig.channels(Role.TAP_VOLTS).isEmpty() ? tap.scale() * tap.scale() / 12 : 0;
        }
        return Math.sqrt(2 * squares / AFTER);
    }

    /** What the drops say of each cell and of the way to the bus. */
    List<Outcome> look() {
        if (squares == 0) {
            return List.of(Outcome.failed(JOINT, "", "no step of the current was seen, so that no joint was looked at"));
        }
        double[] ohms = new double[cells.size()];
        double[] standard = new double[cells.size()];
        for (int k = 0; k < ohms.length; k++) {
            ohms[k] = product[k] / squares;
            standard[k] = Math.sqrt(variance[k]) / squares;
        }
        List<Outcome> found = new ArrayList<>(cells.size() < 3 ? alone(ohms, standard) : likes(ohms, standard));
        found.addAll(way.look());
        return found;
    }

    private List<Outcome> alone(double[] ohms, double[] standard) {
        List<Outcome> found = new ArrayList<>();
        for (int k = 0; k < ohms.length; k++) {
            found.add(Outcome.passed(JOINT, "cell " + (k + 1), micro("%.0f ± %.0f µΩ between its taps; too few likes to compare with: keep it",
                    ohms[k], 2 * standard[k])));
        }
        return found;
    }

    /** The first cell has no bar between its taps, the others have one each. */
    private List<Outcome> likes(double[] ohms, double[] standard) {
        double middle = median(Arrays.copyOfRange(ohms, 1, ohms.length));
        double typical = median(standard);
        List<Outcome> found = new ArrayList<>();
        for (int k = 0; k < ohms.length; k++) {
            double sure = SURE * Math.hypot(standard[k], typical / Math.sqrt(ohms.length - 2.0));
            double limit = Math.max(FAMILY_SHARE * middle, sure);
            double over = ohms[k] - middle;
            double pair = Math.max(PAIR_SHARE * middle, sure);
            if (k > 0 && k < ohms.length - 1 && onBar(over, ohms[k + 1] - middle, pair)) {
                found.add(Outcome.failed(JOINT, "tap " + (k + 1), micro("cell %.0f has %.0f µΩ more than its likes and the next as much less: its tap sits on the bar, not on the stud",
                        k + 1.0, over)));
            } else if (over > limit) {
                found.add(Outcome.failed(JOINT, "cell " + (k + 1), micro("joint or tap at cell %.0f: %.0f µΩ where its likes have %.0f µΩ; found from %.0f µΩ more", k + 1.0,
                        ohms[k], middle, limit)));
            } else if (k > 0 && -over > limit && (k == 1 || !onBar(ohms[k - 1] - middle, over, pair))) {
                found.add(Outcome.failed(JOINT, "tap " + k, micro("cell %.0f has %.0f µΩ less than its likes: the tap below it sits on the bar, not on the stud",
                        k + 1.0, -over)));
            }
        }
        if (found.isEmpty()) {
            found.add(Outcome.passed(JOINT, "", micro("all in family: the middle has %.0f µΩ, the highest %.0f µΩ; found from %.0f µΩ more", middle,
                    Arrays.stream(ohms).max().orElseThrow(), Math.max(FAMILY_SHARE * middle, SURE * typical))));
        }
        return found;
    }

    /** What one has too much the next has too little: their halved difference is told, and both lie nearer to that pattern than to one joint's. */
    private static boolean onBar(double more, double less, double limit) {
        double drop = (more - less) / 2;
        return drop > limit && Math.abs(more + less) < drop;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }

    /** Figures in µΩ, those that are numbers of cells as they are. */
    private static String micro(String format, double... ohms) {
        Object[] shown = new Object[ohms.length];
        for (int i = 0; i < ohms.length; i++) {
            shown[i] = ohms[i] < 1 ? ohms[i] * 1e6 : ohms[i];
        }
        return String.format(Locale.ROOT, format, shown);
    }
}
