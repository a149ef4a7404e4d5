package rigwarden.run;

import java.util.Optional;
import rigwarden.program.Ended;
import rigwarden.program.Step;
import rigwarden.rig.Device;
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
    private static final double ROUNDING = 1 + 1e-9;
    /** Within this of the ceiling a switched source that has tapered has filled the cells, V. */
    private static final double NEAR_V = 0.05;
    /** A scan at the cut-off may read this much above the mean of its second, V: ripple, noise. */
    private static final double NEAR_CUT_V = 0.02;
    private static final double PROOF_SECONDS = 60;
    /** A switched device gives less than its rating where its voltage is not the worst. */
    private static final double FLOWS_SHARE = 0.5;
    private static final double FLOWS_SECONDS = 2;
    /** Less than this cannot be told from none, A. */
    private static final double FLOWS_LEAST_A = 3;
    /** A soft start looks like a taper until this is over. */
    private static final long SOFT_NANOS = 300_000_000_000L;
    /** One scan without current may be a false reading. */
    private static final long CERTAIN_NANOS = 250_000_000L;
    private static final long LONGEST_TAPER_NANOS = Math.round(Envelope.TAPER_HOURS * 3600e9);

    private final Rig rig;
    private final Sight sight;

    Steps(Rig rig, Sight sight) {
        this.rig = rig;
        this.sight = sight;
    }

    /** Whether a step that ends at its cut-off has measured what the cells hold; a pulse and an approach have not. */
    static boolean measures(Step.Flowing step) {
        return switch (step) {
            case Step.Discharge _, Step.HeatRun _ -> true;
            case Step.Charge _, Step.Park _, Step.Pulse _, Step.Balance _, Step.ProveProtection _, Step.Recover _, Step.ProveStop _ -> false;
        };
    }

    /** Direction of a step with current. */
    Way way(Step.Flowing step) {
        return device(step).charges() ? Way.CHARGE : Way.DISCHARGE;
    }

    Device device(Step.Flowing step) {
        return rig.devices().get(step.through());
    }

    /** The instrument's own voltage limit, V: upper for a source, lower for a sink; none for a switched device. */
    double instrumentVolts(Step.Flowing step) {
        if (device(step).switched()) {
            return 0;
        }
        int series = rig.cells().series();
        double source = Math.min(Envelope.CEILING_V, rig.cells().ceilingVolts() + SOURCE_ABOVE_V);
        return series * (way(step) == Way.CHARGE ? source : SINK_LOW_V);
    }

    /** What a switched device gives or takes cannot be lowered: under its current it has to wait. */
    boolean fits(Step.Flowing step, double ceilingAmps) {
        return device(step).switched() ? step.amps() <= ceilingAmps * ROUNDING : ceilingAmps > 0;
    }

    /** The set point for this scan, inside the lease's ceiling. */
    Progress controlled(Step.Flowing step, Progress progress, double ceilingAmps, Scan scan) {
        double most = Math.min(step.amps(), ceilingAmps);
        if (device(step).switched()) {
            return progress.ordering(most, tapers(step, scan) ? progress.controlNanos() : scan.nanos(), progress.ceilingNanos());
        }
        return switch (step) {
            case Step.Charge charge -> held(progress, most, charge.ceilingVolts(), scan);
            case Step.Park park -> held(progress, most, park.ceilingVolts(), scan);
            case Step.Balance balance -> {
                Progress held = held(progress, most, balance.ceilingVolts(), scan);
                boolean flows = held.ceilingNanos() != Long.MAX_VALUE && held.amps() > balance.endAmps();
                yield flows ? held.ordering(held.amps(), held.controlNanos(), scan.nanos()) : held;
            }
            case Step.Pulse pulse -> {
                boolean base = scan.nanos() - progress.controlNanos() < pulse.baseNanos();
                yield progress.ordering(base ? Math.min(pulse.baseAmps(), most) : most, progress.controlNanos(),
                        progress.ceilingNanos());
            }
            case Step.Discharge _, Step.HeatRun _, Step.ProveProtection _, Step.Recover _, Step.ProveStop _ ->
                progress.ordering(most, progress.controlNanos(), progress.ceilingNanos());
        };
    }

    /** Whether a switched source still gives current, and no more than the taper. */
    private boolean tapers(Step.Flowing step, Scan scan) {
        return step instanceof Step.Charge charge && !sight.noCurrent(scan) && Math.abs(sight.amps(scan)) <= charge.taperAmps();
    }

    /** Constant current, then the current that holds the highest cell at its ceiling. */
    private Progress held(Progress progress, double most, double ceilingVolts, Scan scan) {
        double highest = sight.highest(scan);
        boolean met = progress.ceilingNanos() != Long.MAX_VALUE;
        // one false reading in the middle of a charge; before the first mean nothing is unlikely
        boolean unlikely = progress.top().mean() < ceilingVolts - NEAR_V;
        if (!met && (highest < ceilingVolts || unlikely)) {
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
    Optional<Ended> ended(Step.Flowing step, Progress progress, Scan scan) {
        Optional<Ended> stopped = stopped(step, progress, scan);
        if (stopped.isPresent()) {
            return stopped;
        }
        return switch (step) {
            case Step.Charge charge -> (device(step).switched() ? filled(charge, progress, scan)
                    : charged(progress, charge.ceilingVolts(), charge.taperAmps(), scan))
                    .or(() -> tooLong(progress, charge.amps(), LONGEST_TAPER_NANOS, scan));
            case Step.Park park -> parked(park, progress, scan).or(() -> tooLong(progress, park.amps(), 0, scan));
            case Step.Discharge discharge -> empty(progress, discharge.cutOffVolts(), scan)
                    .or(() -> tooLong(progress, discharge.amps(), 0, scan));
            case Step.Pulse pulse -> pulsed(pulse, progress, scan);
            case Step.Balance balance -> balanced(balance, progress, scan);
            case Step.ProveProtection proof -> approached(proof, scan).or(() -> tooLong(progress, proof.amps(), 0, scan));
            case Step.Recover recover -> sight.lowest(scan) >= recover.untilVolts()
                    ? Optional.of(Ended.CHARGE_REACHED)
                    : tooLong(progress, recover.amps(), 0, scan);
            case Step.ProveStop proof -> unfit(proof, progress, scan);
            case Step.HeatRun run -> empty(progress, run.cutOffVolts(), scan)
                    .or(() -> scan.nanos() - progress.sinceNanos() > run.atMostNanos()
                            ? Optional.of(Ended.TIME) : Optional.empty());
        };
    }

    /**
     * Who ended the current, when it flowed and no longer does. A bus that is not tied to the pack any more was cut off by
     * the battery's protection, if a cell was where it opens; else the warden trips. A tied one was left by the device.
     */
    private Optional<Ended> stopped(Step.Flowing step, Progress progress, Scan scan) {
        Device device = device(step);
        if (!progress.flowed() || !sight.noCurrent(scan) || progress.amps() == 0 || !sight.busSeen(scan)) {
            return Optional.empty();
        }
        if (!sight.tied(scan)) {
            Way way = way(step);
            double extreme = (way == Way.CHARGE ? progress.top() : progress.window()).mean();
            return rig.protection()
                    .filter(protection -> sight.meets(protection, scan, extreme, way))
                    .map(_ -> Ended.PROTECTION);
        }
        long gone = scan.nanos() - progress.flowedNanos();
        boolean over = device.switched() && gone > Math.round(device.restsSeconds() * 1e9);
        return gone > CERTAIN_NANOS && (over || quit(device, scan)) ? Optional.of(device.charges() ? Ended.CHARGER : Ended.SINK) : Optional.empty();
    }

    /** Below the middle of the two voltages at which it quits and starts again, an inverter has quit: no thermostat waits there. */
    private boolean quit(Device device, Scan scan) {
        return switch (device) {
            case Device.Inverter inverter -> sight.busVolts(scan) < (inverter.quitVolts() + inverter.restartVolts()) / 2;
            case Device.Programmed _, Device.PlainCharger _ -> false;
        };
    }

    private Optional<Ended> empty(Progress progress, double cutOffVolts, Scan scan) {
        return atCutOff(progress, cutOffVolts, scan) ? Optional.of(Ended.CUT_OFF) : Optional.empty();
    }

    /** In the mean of a second, and about there in this scan too: one false reading takes a mean with it. */
    private boolean atCutOff(Progress progress, double cutOffVolts, Scan scan) {
        return progress.window().mean() <= cutOffVolts && sight.lowest(scan) <= cutOffVolts + NEAR_CUT_V;
    }

    /** No step goes on for ever: a quarter more than the rating takes at this current is enough for any sound cell. */
    private Optional<Ended> tooLong(Progress progress, double amps, long more, Scan scan) {
        double hours = ENOUGH * rig.cells().ratedAmpHours() / amps;
        boolean over = scan.nanos() - progress.sinceNanos() > hours * 3600e9 + more;
        return over ? Optional.of(Ended.TIME) : Optional.empty();
    }

    /** Cells that are too full or too empty for its current, or a device that does not get going, leave nothing to be proved. */
    private Optional<Ended> unfit(Step.ProveStop proof, Progress progress, Scan scan) {
        double limit = device(proof).startSeconds() + PROOF_SECONDS;
        if (way(proof) == Way.CHARGE && sight.highest(scan) >= rig.cells().ceilingVolts()) {
            return Optional.of(Ended.CEILING);
        }
        if (way(proof) == Way.DISCHARGE && atCutOff(progress, rig.cells().cutOffVolts(), scan)) {
            return Optional.of(Ended.CUT_OFF);
        }
        return scan.nanos() - progress.sinceNanos() > limit * 1e9 ? Optional.of(Ended.TIME) : Optional.empty();
    }

    /**
     * Whether current that was ordered flows beyond doubt: in this scan, in the last one, and in sum, since one false reading would else let a
     * current stop that never flowed.
     *
     * @param before the scan before
     */
    boolean flows(Step.ProveStop proof, Progress progress, Progress.Point before, Scan scan) {
        double least = Math.max(FLOWS_LEAST_A, FLOWS_SHARE * proof.amps());
        double amps = sight.amps(scan) * way(proof).sign();
        double moved = Math.abs(progress.account().ampHours()) * 3600;
        return progress.amps() > 0 && amps >= least && before.amps() * way(proof).sign() >= least && moved >= least * FLOWS_SECONDS;
    }

    /** A switched source cannot be held back: at the ceiling of the highest cell it is over, full or not. */
    private Optional<Ended> filled(Step.Charge charge, Progress progress, Scan scan) {
        double highest = sight.highest(scan);
        boolean tapered = progress.flowed() && scan.nanos() - progress.sinceNanos() > SOFT_NANOS
                && tapers(charge, scan) && scan.nanos() - progress.controlNanos() >= CONTROL_NANOS
                && highest >= charge.ceilingVolts() - NEAR_V;
        if (tapered) {
            return Optional.of(Ended.TAPER);
        }
        return atCeiling(progress, charge.ceilingVolts(), scan) ? Optional.of(Ended.CEILING) : Optional.empty();
    }

    /** In this scan and in the mean of the second before: one false reading among a million ends no charge. */
    private boolean atCeiling(Progress progress, double ceilingVolts, Scan scan) {
        return sight.highest(scan) >= ceilingVolts && progress.top().mean() >= ceilingVolts;
    }

    private Optional<Ended> pulsed(Step.Pulse pulse, Progress progress, Scan scan) {
        boolean high = way(pulse) == Way.CHARGE && sight.highest(scan) >= rig.cells().ceilingVolts() - NEAR_V;
        boolean low = way(pulse) == Way.DISCHARGE && atCutOff(progress, rig.cells().cutOffVolts(), scan);
        if (high || low) {
            return Optional.of(high ? Ended.CEILING : Ended.CUT_OFF);
        }
        boolean over = scan.nanos() - progress.controlNanos() >= pulse.baseNanos() + pulse.pulseNanos();
        return over ? Optional.of(Ended.TIME) : Optional.empty();
    }

    /** In series the first cell at the ceiling ends it; in parallel a current that has been small since {@code ceilingNanos}. */
    private Optional<Ended> balanced(Step.Balance balance, Progress progress, Scan scan) {
        if (progress.ceilingNanos() == Long.MAX_VALUE) {
            return tooLong(progress, balance.amps(), 0, scan);
        }
        if (rig.cells().series() > 1) {
            return Optional.of(Ended.CEILING);
        }
        boolean balanced = scan.nanos() - progress.ceilingNanos() >= balance.holdNanos();
        return balanced ? Optional.of(Ended.TAPER) : tooLong(progress, balance.endAmps(), 0, scan);
    }

    private Optional<Ended> approached(Step.ProveProtection proof, Scan scan) {
        if (way(proof) == Way.CHARGE) {
            return sight.highest(scan) >= proof.limitVolts() ? Optional.of(Ended.CEILING) : Optional.empty();
        }
        return sight.lowest(scan) <= proof.limitVolts() ? Optional.of(Ended.CUT_OFF) : Optional.empty();
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

    private Optional<Ended> parked(Step.Park park, Progress progress, Scan scan) {
        double measured = progress.carried().measuredAmpHours();
        double capacity = measured > 0 ? measured : rig.cells().ratedAmpHours();
        if (progress.account().ampHours() >= park.share() * capacity) {
            return Optional.of(Ended.CHARGE_REACHED);
        }
        boolean high = progress.ceilingNanos() != Long.MAX_VALUE || atCeiling(progress, park.ceilingVolts(), scan);
        return high ? Optional.of(Ended.CEILING) : Optional.empty();
    }
}
