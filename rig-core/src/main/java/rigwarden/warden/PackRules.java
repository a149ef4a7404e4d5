package rigwarden.warden;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** What only cells beside each other can tell: a tap that is off, a joint that steps, a cell that falls alone. */
final class PackRules {
    /** Fewer cells have no median that one of them could be held against. */
    private static final int LEAST_CELLS = 3;
    /** Between these every sound cell is within a few millivolts of the others, whatever its charge. */
    private static final double FLAT_LOW_V = 3.25;
    private static final double FLAT_HIGH_V = 3.38;
    private static final double TAP_OFF_V = 0.020;
    private static final double STEP_LOW_V = 3.0;
    private static final double STEP_HIGH_V = 3.5;
    private static final double STEP_OHMS = 0.1e-3;
    private static final double STEP_V = 0.005;
    private static final double STEADY = 0.02;
    private static final double DRIFT = 0.3;
    private static final double DRIFT_V = 0.005;
    private static final long SETTLED_NANOS = 5_400_000_000_000L;
    private static final double FALL_V = 0.003;
    private static final double OTHERS_GIVE_V = 3.15;
    private static final double EARLY_V = 0.150;
    private static final double EARLY_FALL_V = 0.005;

    private PackRules() {}

    static List<Rule> of(Rig rig) {
        if (rig.cells().series() < LEAST_CELLS) {
            return List.of();
        }
        return List.of(
                Rules.trips(5, "tap off",
                        "Two neighbours on the flat of the curve differ from the others, who are alike, by as much, one up "
                                + "and one down: the tap between them is off, and no cell.",
                        Set.of(Role.CELL_VOLTS), "20 mV + uncertainty each, the others within 20 mV between 3.25 and 3.38 V", 1, PackRules::tap),
                Rules.trips(6, "cell or joint stepped",
                        "At steady current a cell moved against its likes within a second: a joint came loose.",
                        Set.of(Role.CELL_VOLTS, Role.CURRENT), "0.1 mΩ × current + 5 mV, between 3.0 and 3.5 V", 0.2,
                        PackRules::stepped),
                Rules.warns(7, "path resistance drifts",
                        "The resistance between the measuring points of pack and cells is not what it was when learnt.",
                        Set.of(Role.CELL_VOLTS, Role.PACK_VOLTS, Role.CURRENT), "30 % + 5 mV", 60, PackRules::drifts),
                Rules.warns(20, "cell falls before its likes",
                        "While the others have charge to give a cell falls alone: it holds less, or a leak or its joint makes it look so."
                                + " It will end the step.",
                        Set.of(Role.CELL_VOLTS), "150 mV under the median of 3.15 V or more, and 5 mV more than it in a minute", 20,
                        PackRules::early),
                Rules.warns(8, "cell falls at rest",
                        "At rest a cell falls faster than its likes: a leak, or a balancer at work.",
                        Set.of(Role.CELL_VOLTS), "3 mV in half an hour, after 90 min", 0, PackRules::falls));
    }

    private static Breach tap(View view) {
        Channel[] cells = view.places().cells;
        if (!view.allValid(cells)) {
            return Breach.NONE;
        }
        for (int k = 0; k + 1 < cells.length; k++) {
            double apart = Math.abs(view.value(cells[k]) - view.value(cells[k + 1]));
            if (apart > 2 * TAP_OFF_V) {
                Breach breach = tap(view, cells, k, view.median(cells));
                if (breach.found()) {
                    return breach;
                }
            }
        }
        return Breach.NONE;
    }

    /** The tap between cells k and k + 1 is named by the channel of the lower cell. */
    private static Breach tap(View view, Channel[] cells, int k, double median) {
        if (median < FLAT_LOW_V || median > FLAT_HIGH_V) {
            return Breach.NONE;
        }
        double lower = view.value(cells[k]) - median;
        double upper = view.value(cells[k + 1]) - median;
        double limit = TAP_OFF_V + cells[k].uncertainty(median) + cells[k + 1].uncertainty(median);
        boolean opposite = Math.abs(lower + upper) < TAP_OFF_V && lower * upper < 0;
        boolean off = Math.abs(lower) > limit && Math.abs(upper) > limit;
        return opposite && off && othersAlike(view, cells, k) ? new Breach(cells[k].index(), lower, limit) : Breach.NONE;
    }

    /** Where the others differ among themselves, some are beyond the flat, and nothing can be said of a tap. */
    private static boolean othersAlike(View view, Channel[] cells, int k) {
        double lowest = Double.MAX_VALUE;
        double highest = -Double.MAX_VALUE;
        for (int i = 0; i < cells.length; i++) {
            if (i != k && i != k + 1) {
                lowest = Math.min(lowest, view.value(cells[i]));
                highest = Math.max(highest, view.value(cells[i]));
            }
        }
        return highest - lowest <= TAP_OFF_V;
    }

    /** A tap that comes off steps too: its own rule names it better. */
    private static Breach stepped(View view) {
        Places places = view.places();
        if (!view.at(Closing.CURRENT) || !view.valid(places.current) || !view.allValid(places.cells)) {
            return Breach.NONE;
        }
        Past past = view.memory().past();
        double amps = Math.abs(view.value(places.current));
        double before = Math.abs(past.earlier(places.current, 0));
        if (amps < Learnt.LEAST_AMPS || Math.abs(amps - before) > STEADY * amps) {
            return Breach.NONE;
        }
        double[] moved = new double[places.cells.length];
        boolean any = false;
        double limit = STEP_OHMS * amps + STEP_V;
        for (int i = 0; i < moved.length; i++) {
            double volts = view.value(places.cells[i]);
            moved[i] = past.moved(places.cells[i], volts);
            any |= Math.abs(moved[i]) > limit;
        }
        return any && !tap(view).found() ? against(view, places.cells, moved, limit) : Breach.NONE;
    }

    private static Breach against(View view, Channel[] cells, double[] moved, double limit) {
        double[] sorted = moved.clone();
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        for (int i = 0; i < moved.length; i++) {
            double volts = view.value(cells[i]);
            boolean flat = volts - moved[i] >= STEP_LOW_V && volts - moved[i] <= STEP_HIGH_V;
            if (flat && Math.abs(moved[i] - median) > limit) {
                return new Breach(cells[i].index(), moved[i] - median, limit);
            }
        }
        return Breach.NONE;
    }

    private static Breach drifts(View view) {
        Places places = view.places();
        Learnt learnt = view.memory().past().learnt();
        if (!view.at(Closing.CURRENT) || !learnt.known() || !view.valid(places.current) || !view.valid(places.pack)
                || !view.allValid(places.cells)) {
            return Breach.NONE;
        }
        double amps = view.value(places.current);
        if (Math.abs(amps) < Learnt.LEAST_AMPS) {
            return Breach.NONE;
        }
        double over = view.value(places.pack) - learnt.volts(amps);
        for (Channel cell : places.cells) {
            over -= view.value(cell);
        }
        double limit = DRIFT * Math.abs(learnt.ohms() * amps) + DRIFT_V;
        return Math.abs(over) > limit ? new Breach(places.pack.index(), over, limit) : Breach.NONE;
    }

    private static Breach early(View view) {
        Channel[] cells = view.places().cells;
        if (!view.at(Closing.CURRENT) || !view.energised(Way.DISCHARGE) || !view.allValid(cells)) {
            return Breach.NONE;
        }
        double median = view.median(cells);
        if (median < OTHERS_GIVE_V) {
            return Breach.NONE;
        }
        Past past = view.memory().past();
        for (Channel cell : cells) {
            double volts = view.value(cell);
            if (median - volts > EARLY_V) {
                double[] others = new double[cells.length];
                for (int i = 0; i < others.length; i++) {
                    others[i] = past.movedSlowly(cells[i], view.value(cells[i]));
                }
                Arrays.sort(others);
                if (past.movedSlowly(cell, volts) < others[others.length / 2] - EARLY_FALL_V) {
                    return new Breach(cell.index(), volts, median - EARLY_V);
                }
            }
        }
        return Breach.NONE;
    }

    private static Breach falls(View view) {
        RestTrail rest = view.memory().past().rest();
        if (view.energised() || !rest.whole() || view.stageNanos() < SETTLED_NANOS) {
            return Breach.NONE;
        }
        double[] falls = rest.falls();
        double[] sorted = falls.clone();
        Arrays.sort(sorted);
        double limit = sorted[sorted.length / 2] + FALL_V;
        for (int i = 0; i < falls.length; i++) {
            if (falls[i] > limit) {
                return new Breach(view.places().cells[i].index(), falls[i], limit);
            }
        }
        return Breach.NONE;
    }
}
