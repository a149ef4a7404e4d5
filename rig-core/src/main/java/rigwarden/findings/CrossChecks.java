package rigwarden.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Continuity;
import rigwarden.findings.trace.DeviceSum;

/**
 * One current seen in two ways: the chip's count beside the host's samples, the shunt beside the device's own meter, and the
 * zero where nothing flows. Where two are apart by more than both may be wrong by, an effect is at work that no budget knows.
 * A way round the shunt, a wrong scale or a warm shunt that is smaller than what the device's meter states is seen by none of them.
 */
final class CrossChecks {
    /** Two sums of one current may differ by so much where nothing is wrong, relative (project's assumption). */
    private static final double SUMS_ALIKE = 0.002;
    /** A device's meter is held against the shunt only where it was read for nearly the whole step. */
    private static final double READ_SHARE = 0.95;

    /** A meter that shows less of the shunt's charge than this is that of a device which does not work now. */
    private static final double WORKS = 0.5;

    /** So many times what both may be wrong by, at 95 %, they must be apart: three standard uncertainties, since each step is asked (project's assumption). */
    private static final double SURELY = 1.5;

    private CrossChecks() {}

    /** Of one step. */
    static List<String> of(StepNotes step) {
        List<String> found = new ArrayList<>();
        sums(step).ifPresent(found::add);
        device(step).ifPresent(found::add);
        if (step.sums().kind().equals("rest")) {
            zero(step).ifPresent(found::add);
        }
        return found;
    }

    /** Of a step with current, and of the zero at the rests of its run: the one that errs most, and what that makes in this step. */
    static List<String> of(Gathered run, StepNotes step) {
        List<String> found = new ArrayList<>(of(step));
        run.steps().stream().filter(s -> s.sums().kind().equals("rest") && zero(s).isPresent())
                .max(Comparator.comparingDouble(s -> Math.abs(zeroAmps(s)))).ifPresent(rest -> found.add(Words.say(
                        "the current's zero was off by %+.0f mA in step %d, beyond what is stated: over this step that alone is %+.2f Ah",
                        1000 * zeroAmps(rest), rest.sums().index(), zeroAmps(rest) * step.sums().seconds() / 3600)));
        return found;
    }

    /** The host's own samples beside the count; the clock ratio, as it was learnt, is in the count. What flowed unseen is in neither. */
    private static Optional<String> sums(StepNotes step) {
        Continuity seen = step.continuity();
        double whole = step.sums().chargeAmpHours().value();
        double charge = whole - Math.signum(whole) * step.sums().unseenAmpHours();
        if (seen.summed() || seen.rippleShare() == 0 || charge == 0) {
            return Optional.empty();
        }
        double samples = (1 + seen.rippleShare()) * (seen.countedCoulombs() + seen.guessedCoulombs()) / 3600;
        double share = samples / charge - 1;
        return Math.abs(share) <= SUMS_ALIKE ? Optional.empty() : Optional.of(Words.say(
                "the samples of the current sum to %.2f %% %s than the count: a ripple on the current that folds into one of the two, or a clock of the"
                        + " count that is not yet learnt or was learnt wrongly; the count stands", 100 * Math.abs(share), share < 0 ? "less" : "more"));
    }

    private static Optional<String> device(StepNotes step) {
        Optional<DeviceSum> seen = step.device();
        StepFinding sums = step.sums();
        boolean works = seen.isPresent() && seen.get().seconds() >= READ_SHARE * sums.seconds()
                && seen.get().ampHours() / sums.chargeAmpHours().value() > WORKS;
        if (!works || sums.kind().equals("rest")) {
            return Optional.empty();
        }
        double apart = seen.get().ampHours() - sums.chargeAmpHours().value();
        double both = Math.hypot(seen.get().expandedAmpHours(), sums.chargeBudget().expanded());
        return Math.abs(apart) <= SURELY * both ? Optional.empty() : Optional.of(Words.say(
                "the device's own meter %s gives %.2f Ah, the shunt %.2f Ah: and both together may be wrong by %.2f Ah: a way round the"
                        + " shunt, a shunt that is not what it says, or that meter", seen.get().name(), seen.get().ampHours(),
                sums.chargeAmpHours().value(), both));
    }

    private static double zeroAmps(StepNotes rest) {
        return rest.sums().chargeAmpHours().value() / (rest.sums().seconds() / 3600);
    }

    private static Optional<String> zero(StepNotes rest) {
        StepFinding sums = rest.sums();
        boolean off = sums.seconds() > 0 && Math.abs(sums.chargeAmpHours().value()) > SURELY * sums.chargeBudget().expanded();
        return !off ? Optional.empty() : Optional.of(Words.say(
                "%+.4f Ah were counted at rest, where nothing flows, and ± %.4f Ah are stated: a thermo-electric voltage on the shunt, an offset, or a path"
                        + " that is not open", sums.chargeAmpHours().value(), sums.chargeBudget().expanded()));
    }
}
