package rigwarden.run;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rigwarden.run.Answer.Condition;
import rigwarden.run.Answer.Unmet;
import rigwarden.run.Progress.Carried;
import rigwarden.warden.Swing;

/**
 * Where a run was broken off, and all that the run which goes on from there must know of it. It stands in the file of that
 * run, which therefore replays like any other. Times are of that run's clock.
 *
 * @param run number of the run that was broken off
 * @param step number of its step, from 1
 * @param spentNanos how long that step has run
 * @param before what the step gave, over all parts so far
 * @param topNanos for how long the highest cell has been at its ceiling; −1 before
 * @param measuredAmpHours what the last whole discharge gave, Ah; 0 before any
 * @param zeroKelvin by body: its probe over the room's before any current
 * @param brokenNanos when the last scan was taken, on the clock of the run that goes on; may be negative
 * @param brokenAmps current ordered then, A, magnitude
 * @param rest by cell: where it comes to rest
 * @param swing what the warden had counted
 */
public record PickUp(
        int run,
        int step,
        long spentNanos,
        Account before,
        long topNanos,
        double measuredAmpHours,
        List<Double> zeroKelvin,
        long brokenNanos,
        double brokenAmps,
        List<Bracket> rest,
        Swing swing) {
    /** The longest outage after which a run may go on (safety design, section 5). */
    public static final long LONGEST_NANOS = 1800_000_000_000L;

    public PickUp {
        zeroKelvin = List.copyOf(zeroKelvin);
        rest = List.copyOf(rest);
    }

    /**
     * Where this state of a run would be picked up; nothing where it is in no step.
     *
     * @param nanos of the scan that led to it
     * @param amps current ordered, A, magnitude
     * @param swing what the warden had counted
     */
    static Optional<PickUp> of(int run, RunState state, long nanos, double amps, List<Bracket> rest,
            Swing swing) {
        return switch (state) {
            case RunState.Idle _, RunState.Proving _, RunState.Interrupted _, RunState.Finished _ -> Optional.empty();
            case RunState.Waiting s -> Optional.of(of(run, s.progress().waited(nanos - s.sinceNanos()), nanos, amps, rest, swing));
            case RunState.Showing s -> Optional.of(of(run, s.progress(), nanos, amps, rest, swing));
            case RunState.Closes s -> Optional.of(of(run, s.progress(), nanos, amps, rest, swing));
            case RunState.Stepping s -> Optional.of(of(run, s.progress(), nanos, amps, rest, swing));
            case RunState.Parting s -> Optional.of(of(run, s.progress(), nanos, amps, rest, swing));
            case RunState.Resting s -> Optional.of(of(run, s.progress(), nanos, amps, rest, swing));
            case RunState.Opening s -> s.by().isEmpty()
                    ? Optional.of(of(run, s.progress(), nanos, amps, rest, swing)) : Optional.empty();
        };
    }

    private static PickUp of(int run, Progress progress, long nanos, double amps, List<Bracket> rest,
            Swing swing) {
        Carried carried = progress.carried();
        List<Double> zero = Arrays.stream(carried.zeroKelvin()).boxed().toList();
        long top = progress.ceilingNanos() == Long.MAX_VALUE ? -1 : nanos - progress.ceilingNanos();
        return new PickUp(run, progress.step() + 1, nanos - progress.sinceNanos(), progress.whole(), top,
                carried.measuredAmpHours(), zero, nanos, amps, rest, swing);
    }

    /** What the warden had counted where a run goes on; nothing where it begins anew. */
    public static Swing swing(Optional<PickUp> from) {
        return from.map(PickUp::swing).orElse(Swing.NONE);
    }

    /** The same on another clock, which showed this when the last scan was taken. */
    public PickUp brokenAt(long nanos) {
        return new PickUp(run, step, spentNanos, before, topNanos, measuredAmpHours, zeroKelvin, nanos, brokenAmps, rest, swing);
    }

    Carried carried() {
        return new Carried(0, Set.of(), measuredAmpHours,
                zeroKelvin.stream().mapToDouble(Double::doubleValue).toArray(), before);
    }

    /** The outage, when it is too long by now. */
    public Optional<Unmet> late(long nowNanos) {
        long outage = nowNanos - brokenNanos;
        if (outage >= 0 && outage <= LONGEST_NANOS) {
            return Optional.empty();
        }
        return Optional.of(new Unmet(Condition.OUTAGE, String.format(Locale.ROOT, "%.1f min", outage / 60e9),
                String.format(Locale.ROOT, "0 to %.0f min", LONGEST_NANOS / 60e9)));
    }

    /** The first cell that does not show at rest what the account says. */
    Optional<Unmet> disagrees(double[] volts) {
        for (int cell = 0; cell < volts.length; cell++) {
            Bracket bracket = rest.get(cell);
            if (!bracket.holds(volts[cell])) {
                return Optional.of(new Unmet(Condition.REST_VOLTAGE,
                        String.format(Locale.ROOT, "cell %d at %.4f V", cell + 1, volts[cell]),
                        String.format(Locale.ROOT, "%.4f to %.4f V by the account of run %d", bracket.lowVolts(),
                                bracket.highVolts(), run)));
            }
        }
        return Optional.empty();
    }
}
