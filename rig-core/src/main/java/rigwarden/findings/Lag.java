package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import rigwarden.findings.trace.Knees;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** Cells beside the one that was first at an end: by how much charge they lag it, read on the knee that they share with it. */
final class Lag {
    /** The knees of two cells of one lot are alike within so much of what is read on them, limits (project's assumption). */
    private static final double KNEES = 0.2;
    /** Only so gently charged does a cell above 3.42 V stand on its knee, 1/h. */
    private static final double GENTLE_C = 0.1;

    private Lag() {}

    /** Which cell ended a discharge at the cut-off, and what the others still held. */
    static List<Finding> atEmpty(Traced rig, StepNotes step) {
        List<Channel> cells = rig.channels(Role.CELL_VOLTS);
        Knees knees = step.knees();
        if (step.sums().by() != Ended.CUT_OFF) {
            return List.of(finding(step, Kind.LIMITING_CELL, "", new Answer.Refused("no cell met its cut-off: the step was "
                    + Conditions.ended(step.sums().by()))));
        }
        if (IntStream.range(0, cells.size()).anyMatch(c -> Double.isNaN(knees.endVolts()[c]))) {
            return List.of(finding(step, Kind.LIMITING_CELL, "", new Answer.Refused("not every cell was read at the end")));
        }
        int first = extreme(knees.endVolts(), -1);
        List<Finding> found = new ArrayList<>();
        found.add(finding(step, Kind.LIMITING_CELL, "", who(cells, knees.endVolts(), first, -1)));
        for (int cell = 0; cell < cells.size(); cell++) {
            if (cell != first) {
                found.add(finding(step, Kind.LIMITING_CELL, ", left in cell " + cells.get(cell).cell(),
                        left(cells.get(cell), knees, first, cell)));
            }
        }
        return found;
    }

    private static Answer left(Channel channel, Knees knees, int first, int cell) {
        double volts = knees.endVolts()[cell];
        double u = channel.uncertainty(volts);
        double out = -knees.endAmpHours();
        if (volts > Knees.EMPTY_FROM_VOLTS) {
            double least = out - knees.emptyAt(first, Knees.EMPTY_FROM_VOLTS);
            return Double.isNaN(least)
                    ? new Answer.Refused("it was still on the flat, and the first cell's knee was not seen")
                    : new Answer.AtLeast(Math.max(0, (1 - KNEES) * least), "Ah", new Budget(List.of(Budget.limits("knees alike", KNEES * least))),
                            Words.say("at %.3f V it had not left the flat", volts));
        }
        double high = out - knees.emptyAt(first, Math.min(volts + u, Knees.EMPTY_FROM_VOLTS));
        double low = out - knees.emptyAt(first, Math.max(volts - u, knees.endVolts()[first]));
        return between(low, high, volts);
    }

    private static Answer between(double low, double high, double volts) {
        double least = Double.isNaN(low) ? 0 : Math.max(0, low);
        return Double.isNaN(high)
                ? new Answer.Refused(Words.say("at %.3f V the first cell's knee was not seen", volts))
                : new Answer.Between((1 - KNEES) * least, (1 + KNEES) * Math.max(0, high), "Ah",
                        Words.say("it was at %.3f V, where the first cell had been before", volts));
    }

    /** Charge to be added to each cell for it to be as full as the first. */
    static List<Finding> atFull(Traced rig, StepNotes step) {
        List<Channel> cells = rig.channels(Role.CELL_VOLTS);
        Knees knees = step.knees();
        double rate = Math.abs(knees.endAmps()) / rig.cells().ratedAmpHours();
        if (cells.size() < 2) {
            return List.of();
        }
        if (rate > GENTLE_C) {
            return List.of(finding(step, Kind.BALANCE, "", new Answer.Refused(Words.say(
                    "it was charged at %.2f C to the end: above 0.1 C the resistance hides who is on the knee", rate))));
        }
        if (IntStream.range(0, cells.size()).anyMatch(c -> Double.isNaN(knees.endVolts()[c]))) {
            return List.of(finding(step, Kind.BALANCE, "", new Answer.Refused("not every cell was read at the end")));
        }
        int first = extreme(knees.endVolts(), 1);
        double from = knees.fullAt(first, Knees.FULL_FROM_VOLTS);
        if (knees.endVolts()[first] < Knees.FULL_FROM_VOLTS || Double.isNaN(from)) {
            return List.of(finding(step, Kind.BALANCE, "", new Answer.Refused("no cell left the flat")));
        }
        List<Finding> found = new ArrayList<>();
        for (int cell = 0; cell < cells.size(); cell++) {
            if (cell != first) {
                found.add(finding(step, Kind.BALANCE, ", to add to cell " + cells.get(cell).cell(),
                        toAdd(cells.get(cell), knees, first, cell, from)));
            }
        }
        return found;
    }

    private static Answer toAdd(Channel channel, Knees knees, int first, int cell, double from) {
        double volts = knees.endVolts()[cell];
        double u = channel.uncertainty(volts);
        double in = knees.endAmpHours();
        if (volts < Knees.FULL_FROM_VOLTS) {
            double least = (1 - KNEES) * Math.max(0, in - from);
            return new Answer.AtLeast(least, "Ah", new Budget(List.of(Budget.limits("knees alike", KNEES * least))),
                    Words.say("at %.3f V it had not left the flat", volts));
        }
        double high = in - knees.fullAt(first, Math.max(volts - u, Knees.FULL_FROM_VOLTS));
        double low = in - knees.fullAt(first, Math.min(volts + u, knees.endVolts()[first]));
        return between(low, high, volts);
    }

    private static int extreme(double[] volts, int sign) {
        int best = 0;
        for (int i = 1; i < volts.length; i++) {
            best = sign * volts[i] > sign * volts[best] ? i : best;
        }
        return best;
    }

    private static Answer who(List<Channel> cells, double[] volts, int first, int sign) {
        double u = cells.get(first).uncertainty(volts[first]);
        List<String> near = IntStream.range(0, volts.length)
                .filter(c -> sign * (volts[first] - volts[c]) <= Math.hypot(u, cells.get(c).uncertainty(volts[c])))
                .mapToObj(c -> "cell " + cells.get(c).cell()).toList();
        String seen = Words.say("%.3f V at the end", volts[first]);
        return near.size() == 1
                ? new Answer.Named(near.getFirst(), seen)
                : new Answer.CannotTell(String.join(" or ", near), seen + ", and the others within what their taps may be wrong by");
    }

    private static Finding finding(StepNotes step, Kind kind, String about, Answer answer) {
        return new Finding(kind, Words.step(step.sums()) + about, answer, Conditions.of(step), List.of(),
                step.continuity().firstScan(), step.continuity().lastScan());
    }
}
