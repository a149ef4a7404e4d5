package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.rig.Cells;
import rigwarden.rig.Rig;

/** One pack with itself at two times: what changed, at like conditions, and what the two runs cannot tell. */
public final class Comparison {
    /** Two tests at temperatures so far apart are not of like conditions, K. */
    static final double NEAR_K = 3;
    /** The same of mean currents, relative. */
    static final double NEAR_RATE = 0.02;
    /** The same of how long the cells stood full before. */
    static final double NEAR_DAYS = 1;

    private Comparison() {}

    /** Why two runs are not of one pack; empty when they can be. */
    public static Optional<String> strangers(Rig earlier, Rig later) {
        if (!earlier.name().equals(later.name())) {
            return Optional.of(Words.say("one is of \"%s\", the other of \"%s\": a pack is compared with itself", earlier.name(), later.name()));
        }
        Cells then = earlier.cells();
        Cells now = later.cells();
        if (then.series() != now.series() || then.parallel() != now.parallel() || then.ratedAmpHours() != now.ratedAmpHours()) {
            return Optional.of(Words.say("the rig file said %s then and says %s now: other cells, and nothing of them is the same", words(then),
                    words(now)));
        }
        return Optional.empty();
    }

    private static String words(Cells cells) {
        return Words.say("%d in series, %d side by side, %.4g Ah", cells.series(), cells.parallel(), cells.ratedAmpHours());
    }

    /**
     * Everything that is in both, in the order in which the earlier run has it.
     *
     * @param earlier run
     * @param later run of the same pack; ask {@link #strangers} first
     */
    public static List<Change> of(Measured earlier, Measured later) {
        Shared shared = Shared.of(earlier.rig(), later.rig());
        List<Change> all = new ArrayList<>(Changes.capacities(earlier, later, shared));
        all.addAll(Changes.retained(earlier, later, shared));
        all.addAll(Changes.resistances(earlier, later, shared));
        all.addAll(Changes.joints(earlier, later, shared));
        return List.copyOf(all);
    }
}
