package rigwarden.run;

import java.util.Optional;
import rigwarden.program.Ended;
import rigwarden.program.Step;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.warden.Scan;
import rigwarden.warden.Way;

/** What each kind of step orders, and what ends it. */
final class Steps {
    private static final long CONTROL_NANOS = 1_000_000_000L;
    /** Resistance of a cell at the top of charge, Ω for one ampere-hour; sets the gain of the voltage control. */
    private static final double OHM_AMP_HOURS = 0.06;
    private static final double CONTROL_GAIN = 0.35;
    /** Within this of the ceiling a cell counts as held there, V. */
    private static final double HELD_V = 0.010;
    /** The source's own limit lies this far above the ceiling at the cell, V: it is the second layer, not the control. */
    private static final double SOURCE_ABOVE_V = 0.05;
    /** Where the sink's own low limit lies, V per cell. */
    private static final double SINK_LOW_V = 2.40;
    private static final double ENOUGH = 1.25;
    private static final long LONGEST_TAPER_NANOS = Math.round(Envelope.TAPER_HOURS * 3600e9);

    private final Rig rig;
    private final Sight sight;

    Steps(Rig rig, Sight sight) {
        this.rig = rig;
        this.sight = sight;
    }

    /** Direction of a step; a rest has none and is never asked. */
    static Way way(Step step) {
        return switch (step) {
            case Step.Charge _, Step.Park _ -> Way.CHARGE;
            case Step.Discharge _, Step.Rest _ -> Way.DISCHARGE;
        };
    }

    /** The instrument's own voltage limit, V: upper for a source, lower for a sink. */
    double instrumentVolts(Way way) {
        int series = rig.cells().series();
        double source = Math.min(Envelope.CEILING_V, rig.cells().ceilingVolts() + SOURCE_ABOVE_V);
        return series * (way == Way.CHARGE ? source : SINK_LOW_V);
    }

    /** The set point for this scan, inside the lease's ceiling. */
    Progress controlled(Step step, Progress progress, double ceilingAmps, Scan scan) {
        return switch (step) {
            case Step.Charge charge ->
                held(progress, Math.min(charge.amps(), ceilingAmps), charge.ceilingVolts(), scan);
            case Step.Park park -> held(progress, Math.min(park.amps(), ceilingAmps), park.ceilingVolts(), scan);
            case Step.Discharge discharge -> progress.ordering(Math.min(discharge.amps(), ceilingAmps),
                    progress.controlNanos(), progress.ceilingNanos());
            case Step.Rest _ -> progress;
        };
    }

    /** Constant current, then the current that holds the highest cell at its ceiling. */
    private Progress held(Progress progress, double most, double ceilingVolts, Scan scan) {
        double highest = sight.highest(scan);
        boolean met = progress.ceilingNanos() != Long.MAX_VALUE;
        if (!met && highest < ceilingVolts) {
            return progress.ordering(most, scan.nanos(), Long.MAX_VALUE);
        }
        long since = met ? progress.ceilingNanos() : scan.nanos();
        if (met && scan.nanos() - progress.controlNanos() < CONTROL_NANOS) {
            return progress.ordering(Math.min(progress.amps(), most), progress.controlNanos(), since);
        }
        double ohms = OHM_AMP_HOURS / rig.cells().ratedAmpHours();
        double wanted = progress.amps() + CONTROL_GAIN * (ceilingVolts - highest) / ohms;
        return progress.ordering(Math.clamp(wanted, 0, most), scan.nanos(), since);
    }

    /** What ends the step now, if anything does. */
    Optional<Ended> ended(Step step, Progress progress, Scan scan) {
        return switch (step) {
            case Step.Charge charge -> charged(progress, charge.ceilingVolts(), charge.taperAmps(), scan)
                    .or(() -> tooLong(progress, charge.amps(), LONGEST_TAPER_NANOS, scan));
            case Step.Park park -> parked(park, progress).or(() -> tooLong(progress, park.amps(), 0, scan));
            case Step.Discharge discharge -> progress.window().mean() <= discharge.cutOffVolts()
                    ? Optional.of(Ended.CUT_OFF)
                    : tooLong(progress, discharge.amps(), 0, scan);
            case Step.Rest _ -> Optional.empty();
        };
    }

    /** No step goes on for ever: a quarter more than the rating takes at this current is enough for any sound cell. */
    private Optional<Ended> tooLong(Progress progress, double amps, long more, Scan scan) {
        double hours = ENOUGH * rig.cells().ratedAmpHours() / amps;
        boolean over = scan.nanos() - progress.sinceNanos() > hours * 3600e9 + more;
        return over ? Optional.of(Ended.TIME) : Optional.empty();
    }

    private Optional<Ended> charged(Progress progress, double ceilingVolts, double taperAmps, Scan scan) {
        if (progress.ceilingNanos() == Long.MAX_VALUE) {
            return Optional.empty();
        }
        if (progress.amps() <= taperAmps && sight.highest(scan) >= ceilingVolts - HELD_V) {
            return Optional.of(Ended.TAPER);
        }
        boolean tooLong = scan.nanos() - progress.ceilingNanos() > LONGEST_TAPER_NANOS;
        return tooLong ? Optional.of(Ended.CEILING) : Optional.empty();
    }

    private Optional<Ended> parked(Step.Park park, Progress progress) {
        double measured = progress.carried().measuredAmpHours();
        double capacity = measured > 0 ? measured : rig.cells().ratedAmpHours();
        if (progress.account().ampHours() >= park.share() * capacity) {
            return Optional.of(Ended.CHARGE_REACHED);
        }
        return progress.ceilingNanos() == Long.MAX_VALUE ? Optional.empty() : Optional.of(Ended.CEILING);
    }
}
