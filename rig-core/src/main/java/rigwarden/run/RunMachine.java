package rigwarden.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.run.Progress.Carried;
import rigwarden.warden.Closing;
import rigwarden.warden.Inbox;
import rigwarden.warden.Lease;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;
import rigwarden.warden.Setpoint;
import rigwarden.warden.Verdict;
import rigwarden.warden.Warning;
import rigwarden.warden.Way;
import rigwarden.warden.Wish;

/**
 * Walks a programme. Pure: state, verdict, scan and inbox in, the next state, a wish and events out. It can wish for
 * energy and nothing more.
 */
public final class RunMachine {
    /** Healthy scans before anything is energised. */
    static final int PROVING_SCANS = 20;
    /** On which a proof has the line rest, one after the other; a run looks at one. */
    private static final int LEVELS = 2;
    private static final long SECOND = 1_000_000_000L;
    private static final long ZERO_CURRENT_NANOS = 3 * SECOND;
    private static final long CONTACT_NANOS = SECOND;
    private static final long LONGEST_WAIT_NANOS = 8 * 3600 * SECOND;
    /** At the edge of what the cold allows a source would else go on and off all the time. */
    private static final long PAUSE_NANOS = 300 * SECOND;
    /** Between two pauses a smaller share of the rating is no progress. */
    private static final double LEAST_SHARE = 1e-3;
    private static final int IDLE_MOST = 2;
    private static final long STILL_NANOS = 2 * SECOND;
    private static final double STILL_SHARE = 0.005;
    /** Then everything is opened, whatever was seen: the warden grants three seconds. */
    private static final long LONGEST_PARTING_NANOS = 2 * SECOND;
    /** Scans in a row without current, of which one or two may be false. */
    private static final int GONE_SCANS = 5;
    private static final Setpoint NO_SET = Setpoint.NONE;

    private final Program program;
    private final Sight sight;
    private final Steps steps;
    private final Request asks;
    private final double leastAmpHours;
    private final Optional<PickUp> from;

    public RunMachine(Rig rig, Program program) {
        this(rig, program, Optional.empty());
    }

    /** A machine whose run goes on where another was broken off, if there is such a place. */
    public RunMachine(Rig rig, Program program, Optional<PickUp> from) {
        this.program = program;
        this.from = from;
        this.sight = new Sight(rig);
        this.steps = new Steps(rig, sight);
        this.asks = from.isPresent() ? Request.CONTINUE : start(program);
        this.leastAmpHours = LEAST_SHARE * rig.cells().ratedAmpHours();
    }

    /** What a person must ask for to start this programme. */
    public static Request start(Program program) {
        boolean recovers = program.steps().stream().anyMatch(step -> step instanceof Step.Recover);
        return recovers ? Request.RECOVER : Request.START;
    }

    /** One cycle. */
    public Next next(RunState state, Verdict verdict, Scan scan, Inbox inbox) {
        return switch (verdict) {
            case Verdict.Unhealthy unhealthy -> tripped(state, unhealthy);
            case Verdict.Stopped stopped -> stopped(state, inbox, warned(stopped.warnings()));
            case Verdict.Healthy healthy -> {
                Next next = healthy(state, healthy.lease(), scan, inbox);
                yield healthy.warnings().isEmpty() ? next : with(next, warned(healthy.warnings()));
            }
        };
    }

    private static List<Event> warned(List<Warning> warnings) {
        return warnings.stream().map(w -> (Event) new Event.Warned(w)).toList();
    }

    private static Next with(Next next, List<Event> more) {
        List<Event> events = new ArrayList<>(more);
        events.addAll(next.events());
        return new Next(next.state(), next.wish(), List.copyOf(events));
    }

    /** Every trip is told of in every state: contacts weld when they open, which is after the step. */
    private static Next tripped(RunState state, Verdict.Unhealthy verdict) {
        Event tripped = new Event.Tripped(verdict.first(), verdict.also());
        int trips = 1 + verdict.also().size();
        return switch (state) {
            case RunState.Interrupted s -> trips == s.told()
                    ? Next.quiet(s)
                    : Next.quiet(new RunState.Interrupted(s.step(), trips), tripped);
            case RunState.Finished s -> trips == s.told()
                    ? Next.quiet(s)
                    : Next.quiet(new RunState.Finished(s.by(), trips), tripped);
            case RunState.Idle _ -> Next.quiet(new RunState.Interrupted(0, trips), tripped);
            case RunState.Proving _ -> Next.quiet(new RunState.Interrupted(0, trips), tripped);
            case RunState.Waiting s -> interrupted(s.progress(), tripped, trips);
            case RunState.Showing s -> interrupted(s.progress(), tripped, trips);
            case RunState.Closes s -> interrupted(s.progress(), tripped, trips);
            case RunState.Stepping s -> interrupted(s.progress(), tripped, trips);
            case RunState.Parting s -> interrupted(s.progress(), tripped, trips);
            case RunState.Resting s -> interrupted(s.progress(), tripped, trips);
            case RunState.Opening s -> interrupted(s.progress(), tripped, trips);
        };
    }

    private static Next interrupted(Progress progress, Event tripped, int trips) {
        return Next.quiet(new RunState.Interrupted(progress.step() + 1, trips), tripped,
                ended(progress, Ended.TRIPPED, false));
    }

    private static Event ended(Progress progress, Ended by, boolean settled) {
        return new Event.StepEnded(progress.step() + 1, by, settled, progress.account());
    }

    private Next stopped(RunState state, Inbox inbox, List<Event> warned) {
        if (!inbox.stop()) {
            return with(state instanceof RunState.Interrupted s
                    ? Next.quiet(cleared(s), new Event.Cleared()) : Next.quiet(state), warned);
        }
        RunState over = new RunState.Finished(Ended.STOPPED, 0);
        Event stop = new Event.StopRequested();
        Event finished = new Event.Finished(Ended.STOPPED);
        Next next = switch (state) {
            case RunState.Idle _, RunState.Interrupted _, RunState.Finished _ -> Next.quiet(state);
            case RunState.Proving _ -> Next.quiet(over, stop, finished);
            case RunState.Waiting s -> Next.quiet(over, stop, ended(s.progress(), Ended.STOPPED, false), finished);
            case RunState.Showing s -> Next.quiet(over, stop, ended(s.progress(), Ended.STOPPED, false), finished);
            case RunState.Closes s -> Next.quiet(over, stop, ended(s.progress(), Ended.STOPPED, false), finished);
            case RunState.Stepping s -> Next.quiet(over, stop, ended(s.progress(), Ended.STOPPED, false), finished);
            case RunState.Parting s -> Next.quiet(over, stop, ended(s.progress(), Ended.STOPPED, false), finished);
            case RunState.Resting s -> Next.quiet(over, stop, ended(s.progress(), Ended.STOPPED, false), finished);
            case RunState.Opening s -> Next.quiet(over, stop, ended(s.progress(), Ended.STOPPED, false), finished);
        };
        return with(next, warned);
    }

    private Next healthy(RunState state, Lease lease, Scan scan, Inbox inbox) {
        return switch (state) {
            case RunState.Idle _ -> inbox.has(asks) && sight.armed(scan) ? started(scan) : Next.quiet(state);
            case RunState.Proving s -> proving(s, scan);
            case RunState.Waiting s -> waiting(s, lease, scan);
            case RunState.Showing s -> showing(s, scan);
            case RunState.Closes s -> closing(s, lease, scan);
            case RunState.Stepping s -> stepping(s, lease, scan);
            case RunState.Parting s -> parting(s, lease, scan);
            case RunState.Resting s -> resting(s, scan);
            case RunState.Opening s -> opening(s, scan);
            case RunState.Interrupted s -> Next.quiet(cleared(s));
            case RunState.Finished _ -> Next.quiet(state);
        };
    }

    private Next started(Scan scan) {
        return from.flatMap(place -> place.late(scan.nanos()))
                .map(RunMachine::notContinued)
                .orElseGet(() -> Next.quiet(new RunState.Proving(0), new Event.Started()));
    }

    private static Next notContinued(Answer.Unmet unmet) {
        return Next.quiet(new RunState.Finished(Ended.NOT_CONTINUED, 0), new Event.NotContinued(unmet),
                new Event.Finished(Ended.NOT_CONTINUED));
    }

    /** What was picked up once is not picked up again from the same place: more has flowed since. */
    private RunState cleared(RunState.Interrupted state) {
        return from.isPresent() && state.step() > 0 ? new RunState.Finished(Ended.TRIPPED, 0) : RunState.IDLE;
    }

    private Next proving(RunState.Proving state, Scan scan) {
        boolean quiet = sight.whole(scan) && sight.open(scan) && sight.noCurrent(scan);
        int healthy = quiet ? state.healthyScans() + 1 : 0;
        if (healthy < PROVING_SCANS) {
            return Next.quiet(new RunState.Proving(healthy));
        }
        return from.isPresent() ? pickUp(from.get(), scan) : begin(0, scan, Carried.fresh(sight.zero(scan)), List.of());
    }

    private Next pickUp(PickUp place, Scan scan) {
        Optional<Answer.Unmet> unmet = place.late(scan.nanos()).or(() -> place.disagrees(sight.volts(scan)));
        if (unmet.isPresent()) {
            return notContinued(unmet.get());
        }
        Progress progress = Progress.pickedUp(place, scan.nanos(), sight.point(scan));
        Step step = step(progress);
        return Next.quiet(entered(step, progress, scan),
                new Event.Continued(place.run(), place.step(), (scan.nanos() - place.brokenNanos()) * 1e-9),
                new Event.StepBegun(place.step(), step.kind()));
    }

    private static RunState entered(Step step, Progress progress, Scan scan) {
        return step instanceof Step.Rest
                ? new RunState.Resting(progress)
                : new RunState.Waiting(progress, scan.nanos(), scan.nanos(), false);
    }

    /** Begins a step, or finishes after the last. */
    private Next begin(int index, Scan scan, Carried carried, List<Event> events) {
        List<Event> all = new ArrayList<>(events);
        if (index == program.steps().size()) {
            all.add(new Event.Finished(Ended.TIME));
            return new Next(new RunState.Finished(Ended.TIME, 0), Wish.NOTHING, List.copyOf(all));
        }
        Step step = program.steps().get(index);
        all.add(new Event.StepBegun(index + 1, step.kind()));
        Progress progress = Progress.begin(index, scan.nanos(), sight.point(scan), carried.onward());
        return new Next(entered(step, progress, scan), Wish.NOTHING, List.copyOf(all));
    }

    private Next waiting(RunState.Waiting state, Lease lease, Scan scan) {
        Progress progress = accounted(state.progress(), scan);
        Step.Flowing step = flowing(progress);
        boolean warm = steps.way(step) == Way.CHARGE
                ? sight.bodiesWithin(scan, Envelope.CHARGING_ENTRY_LOW_C, Envelope.CHARGING_ENTRY_HIGH_C)
                : sight.bodiesWithin(scan, Envelope.DISCHARGING_ENTRY_LOW_C, Envelope.DISCHARGING_ENTRY_HIGH_C);
        boolean fit = warm && steps.fits(step, lease.ceilingAmps(steps.way(step)));
        if (fit && scan.nanos() >= state.notBeforeNanos() && lease.steady() && sight.atRest(scan)) {
            progress = progress.waited(scan.nanos() - state.sinceNanos());
            boolean shows = steps.way(step) == Way.CHARGE && steps.device(step).switched()
                    && !progress.carried().shown().contains(step.through());
            return shows ? show(progress, 0, scan.nanos()) : close(progress, Closing.PRECHARGE, scan.nanos());
        }
        if (scan.nanos() - state.sinceNanos() > LONGEST_WAIT_NANOS) {
            return Next.quiet(new RunState.Finished(Ended.NEVER_FIT, 0), ended(progress, Ended.NEVER_FIT, false),
                    new Event.Finished(Ended.NEVER_FIT));
        }
        RunState waits = new RunState.Waiting(progress, state.sinceNanos(), state.notBeforeNanos(), state.said() || !fit);
        return state.said() || fit
                ? Next.quiet(waits)
                : Next.quiet(waits, new Event.Waited(progress.step() + 1, sight.firstBodyCelsius(scan)));
    }

    private Next show(Progress progress, double volts, long steadyNanos) {
        Step.Flowing step = flowing(progress);
        return Next.of(new RunState.Showing(progress, volts, steadyNanos, false),
                new Wish.Path(Way.CHARGE, step.through(), Closing.NO_LOAD, NO_SET));
    }

    /** The warden judges what it shows; a source that shows nothing is the warden's too. */
    private Next showing(RunState.Showing state, Scan scan) {
        Progress progress = accounted(state.progress(), scan);
        if (state.off()) {
            return sight.atRest(scan)
                    ? Next.quiet(new RunState.Waiting(progress, scan.nanos(), scan.nanos(), false))
                    : Next.quiet(new RunState.Showing(progress, state.volts(), state.steadyNanos(), true));
        }
        if (!sight.busSeen(scan)) {
            return show(progress, state.volts(), scan.nanos());
        }
        double volts = sight.busVolts(scan);
        boolean still = sight.lifted(scan) && Math.abs(volts - state.volts()) <= STILL_SHARE * volts;
        if (!still) {
            return show(progress, volts, scan.nanos());
        }
        if (scan.nanos() - state.steadyNanos() < STILL_NANOS) {
            return show(progress, state.volts(), state.steadyNanos());
        }
        Step.Flowing step = flowing(progress);
        Progress shown = progress.with(progress.carried().showed(step.through()));
        return Next.quiet(new RunState.Showing(shown, volts, state.steadyNanos(), true),
                new Event.NoLoadShown(steps.device(step).name(), volts));
    }

    private Next closing(RunState.Closes state, Lease lease, Scan scan) {
        Progress progress = accounted(state.progress(), scan);
        long inStage = scan.nanos() - state.stageNanos();
        return switch (state.stage()) {
            case PRECHARGE -> lease.steady() && sight.sidesMatch(scan)
                    ? close(progress, Closing.CONTACT, scan.nanos())
                    : close(progress, Closing.PRECHARGE, state.stageNanos());
            case CONTACT -> inStage < CONTACT_NANOS || !sight.closed(scan)
                    ? close(progress, Closing.CONTACT, state.stageNanos())
                    : contacted(progress, lease, scan);
            case NO_LOAD -> show(progress, 0, scan.nanos());
            case SILENCE -> sight.letGo(scan)
                    ? Next.quiet(new RunState.Waiting(progress.with(progress.carried().proved()), scan.nanos(), scan.nanos(), false),
                            new Event.HeartbeatProved(inStage * 1e-9))
                    : close(progress, Closing.SILENCE, state.stageNanos());
            case CURRENT, RELAY_ALONE, CONTACTOR_ALONE -> stepping(new RunState.Stepping(progress), lease, scan);
        };
    }

    private Next contacted(Progress progress, Lease lease, Scan scan) {
        boolean proved = progress.carried().heartbeats() >= (flowing(progress) instanceof Step.ProveStop ? LEVELS : 1);
        return proved
                ? stepping(new RunState.Stepping(progress.resumed(scan.nanos())), lease, scan)
                : close(progress, Closing.SILENCE, scan.nanos());
    }

    private Next close(Progress progress, Closing stage, long stageNanos) {
        Step.Flowing step = flowing(progress);
        Wish wish = new Wish.Path(steps.way(step), step.through(), stage, NO_SET);
        return Next.of(new RunState.Closes(progress, stage, stageNanos), wish);
    }

    private Next stepping(RunState.Stepping state, Lease lease, Scan scan) {
        Progress progress = accounted(state.progress(), scan);
        Step.Flowing step = flowing(progress);
        double ceiling = lease.ceilingAmps(steps.way(step));
        if (!steps.fits(step, ceiling)) {
            return open(progress, Optional.empty(), scan);
        }
        if (!sight.whole(scan)) {
            return Next.of(new RunState.Stepping(progress), current(step, Math.min(progress.amps(), ceiling)));
        }
        Progress controlled = steps.controlled(step, progress, ceiling, scan);
        Optional<Ended> ended = steps.ended(step, controlled, scan);
        if (ended.isEmpty() && step instanceof Step.ProveStop proof && steps.flows(proof, progress, state.progress().point(), scan)) {
            return part(controlled, proof, scan.nanos(), 0, 0);
        }
        return ended.isPresent()
                ? open(controlled, ended, scan)
                : Next.of(new RunState.Stepping(controlled), current(step, controlled.amps()));
    }

    private Next part(Progress progress, Step.ProveStop step, long sinceNanos, int gone, double seconds) {
        Closing stage = switch (step.element()) {
            case RELAY -> Closing.RELAY_ALONE;
            case CONTACTOR -> Closing.CONTACTOR_ALONE;
        };
        Setpoint set = new Setpoint(progress.amps(), steps.instrumentVolts(step));
        return Next.of(new RunState.Parting(progress, sinceNanos, gone, seconds), new Wish.Path(steps.way(step), step.through(), stage, set));
    }

    /** The warden judges the current that goes on; here is only seen that it has gone. */
    private Next parting(RunState.Parting state, Lease lease, Scan scan) {
        Progress progress = accounted(state.progress(), scan);
        Step.ProveStop step = (Step.ProveStop) step(progress);
        boolean allowed = progress.amps() <= lease.ceilingAmps(steps.way(step));
        if (!allowed || scan.nanos() - state.sinceNanos() > LONGEST_PARTING_NANOS) {
            return Next.quiet(new RunState.Opening(progress, Optional.of(Ended.TIME), true, scan.nanos()));
        }
        boolean gone = sight.noCurrent(scan) && switch (step.element()) {
            case CONTACTOR -> sight.open(scan);
            case RELAY -> sight.closed(scan) && sight.tied(scan);
        };
        if (!gone) {
            return part(progress, step, state.sinceNanos(), 0, 0);
        }
        double seconds = state.gone() == 0 ? (scan.nanos() - state.sinceNanos()) * 1e-9 : state.seconds();
        if (state.gone() + 1 < GONE_SCANS) {
            return part(progress, step, state.sinceNanos(), state.gone() + 1, seconds);
        }
        return Next.quiet(new RunState.Opening(progress, Optional.of(Ended.PROVED), true, scan.nanos()),
                new Event.StopProved(steps.device(step).name(), step.element(), seconds));
    }

    private Wish current(Step.Flowing step, double amps) {
        return new Wish.Path(steps.way(step), step.through(), Closing.CURRENT,
                new Setpoint(amps, steps.instrumentVolts(step)));
    }

    private Next open(Progress progress, Optional<Ended> by, Scan scan) {
        return Next.of(new RunState.Opening(progress, by, false, scan.nanos()),
                current(flowing(progress), 0));
    }

    private Next opening(RunState.Opening state, Scan scan) {
        Progress progress = accounted(state.progress(), scan);
        long waited = scan.nanos() - state.sinceNanos();
        if (!state.off()) {
            boolean zero = sight.noCurrent(scan) || waited >= ZERO_CURRENT_NANOS;
            return zero
                    ? Next.quiet(new RunState.Opening(progress, state.by(), true, scan.nanos()))
                    : Next.of(new RunState.Opening(progress, state.by(), false, state.sinceNanos()),
                            current(flowing(progress), 0));
        }
        if (!sight.open(scan) || !sight.noCurrent(scan) || !sight.whole(scan)) {
            return Next.quiet(new RunState.Opening(progress, state.by(), true, state.sinceNanos()));
        }
        if (state.by().isEmpty()) {
            return paused(progress.paused(leastAmpHours), scan);
        }
        Ended by = state.by().get();
        if (flowing(progress) instanceof Step.ProveStop && by != Ended.PROVED) {
            return Next.quiet(new RunState.Finished(by, 0), ended(progress, by, false), new Event.Finished(by));
        }
        boolean measured = by == Ended.CUT_OFF && Steps.measures(flowing(progress));
        Carried carried = measured
                ? progress.carried().measured(-progress.whole().ampHours())
                : progress.carried();
        return begin(progress.step() + 1, scan, carried, List.of(ended(progress, by, false)));
    }

    /** A step that makes no progress, twice, is over: it would go on and off all night. */
    private static Next paused(Progress progress, Scan scan) {
        return progress.idle() < IDLE_MOST
                ? Next.quiet(new RunState.Waiting(progress.resumed(scan.nanos()), scan.nanos(), scan.nanos() + PAUSE_NANOS, false))
                : Next.quiet(new RunState.Finished(Ended.NEVER_FIT, 0), ended(progress, Ended.NEVER_FIT, false),
                        new Event.Finished(Ended.NEVER_FIT));
    }

    private Next resting(RunState.Resting state, Scan scan) {
        Progress progress = accounted(state.progress(), scan);
        if (!(step(progress) instanceof Step.Rest rest) || !sight.whole(scan)) {
            return Next.quiet(new RunState.Resting(progress));
        }
        if (progress.still().due(scan.nanos())) {
            progress = progress.with(progress.still().with(scan.nanos(), sight.volts(scan)));
        }
        long rested = scan.nanos() - progress.sinceNanos();
        boolean settled = rested >= rest.atLeastNanos() && progress.still().still() && sight.nearRoom(scan, progress.carried().zeroKelvin());
        if (!settled && rested < rest.atMostNanos()) {
            return Next.quiet(new RunState.Resting(progress));
        }
        Ended by = settled ? Ended.SETTLED : Ended.TIME;
        return begin(progress.step() + 1, scan, progress.carried(), List.of(ended(progress, by, settled)));
    }

    private Step step(Progress progress) {
        return program.steps().get(progress.step());
    }

    /** A step with current; a rest is in another state. */
    private Step.Flowing flowing(Progress progress) {
        return (Step.Flowing) step(progress);
    }

    private Progress accounted(Progress progress, Scan scan) {
        if (!sight.whole(scan)) {
            return progress;
        }
        Progress.Point before = progress.point();
        Progress.Point now = sight.point(scan);
        Account account = progress.account().plus(now.nanos() - before.nanos(),
                (before.amps() + now.amps()) / 2, (before.watts() + now.watts()) / 2,
                (before.volts() + now.volts()) / 2);
        long flowed = sight.noCurrent(scan) ? progress.flowedNanos() : now.nanos();
        return progress.accounted(account, now, flowed, progress.window().with(now.nanos(), sight.lowest(scan)),
                progress.top().with(now.nanos(), sight.highest(scan)));
    }
}
