package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import rigwarden.program.Ended;

/** What a person must know beside a capacity. */
final class CapacityWords {
    private static final double WORTH_A_NOTE_AMP_HOURS = 0.005;

    private CapacityWords() {}

    /** Why it may be any amount more. */
    static String bound(Capacity capacity, Ended by) {
        List<String> why = new ArrayList<>();
        if (capacity.start() == Capacity.Start.UNKNOWN) {
            why.add("how full it started nobody knows");
        }
        if (by != Ended.CUT_OFF) {
            why.add("no cell had met its cut-off when it ended");
        }
        return why.isEmpty() ? "what its charge left missing from full has no bound" : String.join(", and ", why);
    }

    /** What other steps moved between full and the discharge. */
    static List<String> before(Capacity capacity) {
        double before = capacity.beforeAmpHours();
        if (Math.abs(before) < WORTH_A_NOTE_AMP_HOURS) {
            return List.of();
        }
        if (before < 0) {
            return List.of(Words.say("%.2f Ah were put in by other steps after the cells were full: how much of it they kept is in the budget",
                    -before));
        }
        return List.of(capacity.start() == Capacity.Start.UNKNOWN
                ? Words.say("%.2f Ah had been taken out by other steps before", before)
                : Words.say("%.2f Ah of it were taken out by other steps before, after the cells were full", before));
    }
}
