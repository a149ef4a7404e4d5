package rigwarden.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** Incremental capacity of a slow step, dQ/dV with dV/dQ beside it, where rate and taps allow it; else why not. */
final class SlowCurve {
    /** A bin is a peak where it has so much of the highest, and is the highest of so many on either side. */
    private static final double PEAK_SHARE = 0.15;
    private static final int PEAK_BINS = 4;
    private static final int MOST_PEAKS = 4;

    private SlowCurve() {}

    /** One of each cell, or one that refuses. */
    static List<Finding> of(Traced rig, StepNotes step) {
        StepFinding sums = step.sums();
        double rate = Math.abs(sums.meanAmps()) / rig.cells().ratedAmpHours();
        String refused = ChargePerVolt.refusal(rate, CurveWatch.coarsest(rig));
        refused = refused.isEmpty() ? Charge.refusal(step) : refused;
        refused = refused.isEmpty() && !sums.breaks().isEmpty()
                ? "it was interrupted: what the cell recovered meanwhile stands in the curve as charge" : refused;
        if (!refused.isEmpty() || step.curves().isEmpty()) {
            return List.of(finding(step, "", new Answer.Refused(refused.isEmpty() ? "no cell was read in it" : refused), List.of()));
        }
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < step.curves().size(); i++) {
            found.add(cell(step, rig.channels(Role.CELL_VOLTS).get(i), step.curves().get(i)));
        }
        return found;
    }

    private static Finding cell(StepNotes step, Channel channel, CellCurve curve) {
        double raw = step.continuity().rawCoulombs() / 3600;
        double clock = Math.abs(raw) > 1e-3 ? step.sums().chargeAmpHours().value() / raw : 1;
        double[] perVolt = curve.perVolt().perVolt();
        List<Integer> peaks = peaks(perVolt);
        String about = ", cell " + curve.cell();
        if (peaks.isEmpty()) {
            return finding(step, about, new Answer.Refused("its voltage was never read while charge moved"), List.of());
        }
        double volts = curve.perVolt().volts(peaks.getFirst());
        Budget budget = new Budget(List.of(Budget.standard("voltage tap", channel.uncertainty(volts) / 2),
                Budget.limits("width of a bin", CellCurve.BIN_VOLTS / 2)));
        List<String> notes = new ArrayList<>();
        notes.add("dQ/dV is highest " + String.join(", then ", peaks.stream().map(bin -> Words.say("at %.3f V with %.1f Ah/V",
                curve.perVolt().volts(bin), Math.abs(clock * perVolt[bin]))).toList()));
        VoltsPerCharge slope = curve.perCharge();
        List<String> steep = slope.steepest().stream().map(bin -> Words.say("after %.3f Ah with %.1f mV/Ah", Math.abs(clock) * slope.ampHours(bin),
                1000 * slope.perAmpHour()[bin] / Math.abs(clock))).toList();
        if (!steep.isEmpty()) {
            notes.add("dV/dQ: one plateau goes over into the next " + String.join(", and ", steep));
        }
        return finding(step, about, new Answer.Value(volts, "V", budget), notes);
    }

    /** The highest first. */
    private static List<Integer> peaks(double[] perVolt) {
        double highest = 0;
        for (double each : perVolt) {
            highest = Math.max(highest, Math.abs(each));
        }
        List<Integer> peaks = new ArrayList<>();
        for (int bin = 0; bin < perVolt.length; bin++) {
            if (Math.abs(perVolt[bin]) > 0 && Math.abs(perVolt[bin]) >= PEAK_SHARE * highest && above(perVolt, bin)) {
                peaks.add(bin);
            }
        }
        return peaks.stream().sorted(Comparator.comparingDouble((Integer bin) -> -Math.abs(perVolt[bin]))).limit(MOST_PEAKS).toList();
    }

    private static boolean above(double[] perVolt, int bin) {
        for (int other = Math.max(0, bin - PEAK_BINS); other <= Math.min(perVolt.length - 1, bin + PEAK_BINS); other++) {
            boolean higher = other < bin ? Math.abs(perVolt[other]) >= Math.abs(perVolt[bin]) : Math.abs(perVolt[other]) > Math.abs(perVolt[bin]);
            if (other != bin && higher) {
                return false;
            }
        }
        return true;
    }

    private static Finding finding(StepNotes step, String about, Answer answer, List<String> notes) {
        return new Finding(Kind.INCREMENTAL, Words.step(step.sums()) + about, answer, Conditions.of(step), notes, step.continuity().firstScan(),
                step.continuity().lastScan());
    }
}
