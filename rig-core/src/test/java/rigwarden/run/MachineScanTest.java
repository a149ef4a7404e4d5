package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Closing;
import rigwarden.warden.Inbox;
import rigwarden.warden.OrdersForTests;
import rigwarden.warden.Request;
import rigwarden.warden.Rules;
import rigwarden.warden.Trip;
import rigwarden.warden.Verdict;
import rigwarden.warden.Warning;
import rigwarden.warden.Wish;

/** The machine scan by scan: each wait to the nanosecond, each way from one state to the next. */
class MachineScanTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();
    private static final long SECOND = Seen.SECOND;
    private static final long NOW = Seen.NOW;
    private static final long HOUR = 3600 * SECOND;
    private static final Step.Charge CHARGE = new Step.Charge(0, 21, 3.60, 5.25);
    private static final Step.Rest REST = new Step.Rest(1800 * SECOND, 3 * HOUR);
    private static final Warning WARNING = new Warning(Rules.of(CELL).getFirst(), CELL.channel(Role.ROOM), 1, 2);
    private static final Verdict HEALTHY = healthy(50, true);
    private static final Inbox STOP = new Inbox(true, List.of());

    private static Verdict healthy(double chargeAmps, boolean steady) {
        return new Verdict.Healthy(OrdersForTests.lease(chargeAmps, 100, steady), List.of());
    }

    private static Next next(RunState state, Verdict verdict, Seen seen, Inbox inbox, Step... steps) {
        Step[] all = steps.length == 0 ? new Step[] {CHARGE, REST} : steps;
        return new RunMachine(seen.rig, new Program("test", false, List.of(all))).next(state, verdict, seen.scan(), inbox);
    }

    private static Next next(RunState state, Seen seen, Step... steps) {
        return next(state, HEALTHY, seen, Inbox.EMPTY, steps);
    }

    private static Seen cell() {
        return new Seen(CELL);
    }

    private static Progress step(int index, Seen seen) {
        Progress p = seen.progress();
        return new Progress(index, p.sinceNanos(), p.account(), p.point(), p.amps(), p.controlNanos(), p.ceilingNanos(),
                p.flowedNanos(), p.window(), p.top(), p.still(), p.pausedAmpHours(), p.idle(), p.carried());
    }

    private static Closing wished(Next next) {
        return ((Wish.Path) next.wish()).stage();
    }

    @Test
    void a_warning_is_told_in_the_scan_in_which_it_came_before_all_else() {
        Verdict warned = new Verdict.Healthy(OrdersForTests.lease(50, 50, true), List.of(WARNING));
        assertThat(next(RunState.IDLE, warned, cell(), Inbox.of(Request.START)).events())
                .containsExactly(new Event.Warned(WARNING), new Event.Started());
        assertThat(next(new RunState.Proving(3), new Verdict.Stopped(List.of(WARNING)), cell(), STOP).events())
                .containsExactly(new Event.Warned(WARNING), new Event.StopRequested(), new Event.Finished(Ended.STOPPED));
        assertThat(next(RunState.IDLE, HEALTHY, cell(), Inbox.of(Request.START)).events()).containsExactly(new Event.Started());
    }

    private static Trip trip(int rule) {
        return new Trip(Rules.of(CELL).get(rule), CELL.channel(Role.ROOM), 1, 2, NOW, 1);
    }

    @Test
    void a_trip_after_the_end_is_told_once_and_each_that_comes_after_it_too() {
        Verdict one = new Verdict.Unhealthy(trip(0), List.of());
        Verdict two = new Verdict.Unhealthy(trip(0), List.of(trip(1)));
        RunState over = new RunState.Finished(Ended.TIME, 0);
        Next first = next(over, one, cell(), Inbox.EMPTY);

        assertThat(first.events()).containsExactly(new Event.Tripped(trip(0), List.of()));
        assertThat(first.state()).isEqualTo(new RunState.Finished(Ended.TIME, 1));
        assertThat(next(first.state(), one, cell(), Inbox.EMPTY).events()).isEmpty();
        assertThat(next(first.state(), two, cell(), Inbox.EMPTY).state()).isEqualTo(new RunState.Finished(Ended.TIME, 2));
        assertThat(next(new RunState.Interrupted(1, 1), one, cell(), Inbox.EMPTY).events()).isEmpty();
        assertThat(next(RunState.IDLE, one, cell(), Inbox.EMPTY).state()).isEqualTo(new RunState.Interrupted(0, 1));
    }

    @Test
    void stop_where_nothing_runs_is_no_event_and_changes_nothing() {
        Verdict stopped = new Verdict.Stopped(List.of());
        for (RunState state : List.of(RunState.IDLE, new RunState.Interrupted(2, 1), new RunState.Finished(Ended.TIME, 0))) {
            assertThat(next(state, stopped, cell(), STOP)).isEqualTo(new Next(state, Wish.NOTHING, List.of()));
        }
    }

    @Test
    void a_step_that_shows_its_source_is_stopped_and_tripped_like_any_other() {
        Seen pack = new Seen(PACK);
        RunState showing = new RunState.Showing(step(1, pack), 20, NOW, false);
        assertThat(next(showing, new Verdict.Stopped(List.of()), pack, STOP).events()).hasSize(3);
        assertThat(next(showing, new Verdict.Unhealthy(trip(0), List.of()), pack, Inbox.EMPTY).state())
                .isEqualTo(new RunState.Interrupted(2, 1));
    }

    @Test
    void a_state_says_the_number_of_its_step() {
        Progress third = step(2, cell());
        assertThat(List.of(new RunState.Waiting(third, 0, 0, false), new RunState.Showing(third, 0, 0, false),
                new RunState.Closes(third, Closing.CONTACT, 0), new RunState.Stepping(third), new RunState.Parting(third, 0, 0, 0), new RunState.Resting(third),
                new RunState.Opening(third, Optional.empty(), false, 0), new RunState.Interrupted(3, 0)))
                .allMatch(state -> RunState.step(state) == 3);
        assertThat(List.of(RunState.IDLE, new RunState.Proving(1), new RunState.Finished(Ended.TIME, 0)))
                .allMatch(state -> RunState.step(state) == 0);
    }

    @Test
    void the_twentieth_quiet_scan_begins_the_first_step() {
        assertThat(next(new RunState.Proving(18), cell()).state()).isEqualTo(new RunState.Proving(19));
        Next begun = next(new RunState.Proving(19), cell());
        assertThat(begun.state()).isInstanceOf(RunState.Waiting.class);
        assertThat(begun.events()).containsExactly(new Event.StepBegun(1, "charge"));
        assertThat(next(new RunState.Proving(19), cell().set(Role.FEEDBACK, 1)).state()).isEqualTo(new RunState.Proving(0));
        assertThat(next(new RunState.Proving(19), cell().set(Role.CURRENT, 2)).state()).isEqualTo(new RunState.Proving(0));
    }

    private static RunState.Waiting waiting(long since, long notBefore, boolean said) {
        return new RunState.Waiting(step(0, cell()), since, notBefore, said);
    }

    @Test
    void a_step_waits_until_its_time_its_warmth_a_steady_scan_and_an_empty_bus() {
        assertThat(wished(next(waiting(NOW, NOW, false), cell()))).isEqualTo(Closing.PRECHARGE);
        assertThat(next(waiting(NOW, NOW + 1, false), cell()).state()).isInstanceOf(RunState.Waiting.class);
        assertThat(next(waiting(NOW, NOW, false), healthy(50, false), cell(), Inbox.EMPTY).state()).isInstanceOf(RunState.Waiting.class);
        assertThat(next(waiting(NOW, NOW, false), healthy(0, true), cell(), Inbox.EMPTY).state()).isInstanceOf(RunState.Waiting.class);
        assertThat(next(waiting(NOW, NOW, false), cell().set(Role.BUS_VOLTS, 3.3)).state()).isInstanceOf(RunState.Waiting.class);
        assertThat(next(waiting(NOW, NOW, false), cell().set(Role.BODY, 39)).state()).isInstanceOf(RunState.Waiting.class);
        Next closes = next(waiting(NOW - 7 * SECOND, NOW, false), cell());
        assertThat(((RunState.Closes) closes.state()).progress().sinceNanos()).as("the wait is not the step's")
                .isEqualTo(NOW - 100 * SECOND + 7 * SECOND);
    }

    @Test
    void a_wait_is_told_once_when_it_is_the_cells_and_given_up_after_eight_hours() {
        assertThat(next(waiting(NOW, NOW, false), cell().set(Role.BODY, 9)).events()).containsExactly(new Event.Waited(1, 9));
        assertThat(next(waiting(NOW, NOW, true), cell().set(Role.BODY, 9)).events()).isEmpty();
        Next bus = next(waiting(NOW, NOW, false), cell().set(Role.BUS_VOLTS, 3.3));
        assertThat(bus.events()).as("only the bus").isEmpty();
        assertThat(((RunState.Waiting) bus.state()).said()).isFalse();
        Next cold = next(waiting(NOW, NOW, false), cell().set(Role.BODY, 9));
        assertThat(((RunState.Waiting) cold.state()).said()).isTrue();
        assertThat(((RunState.Waiting) next(waiting(NOW, NOW, true), cell().set(Role.BUS_VOLTS, 3.3)).state()).said()).isTrue();
        assertThat(next(waiting(NOW - 8 * HOUR, NOW, true), cell().set(Role.BODY, 9)).state()).isInstanceOf(RunState.Waiting.class);
        assertThat(next(waiting(NOW - 8 * HOUR - 1, NOW, true), cell().set(Role.BODY, 9)).state())
                .isEqualTo(new RunState.Finished(Ended.NEVER_FIT, 0));
    }

    private static final Step PLAIN = new Step.Charge(0, 21, 3.60, 3);

    /** Only a switched source shows its voltage, once in a run. */
    @Test
    void a_plain_charger_shows_its_voltage_before_its_first_path_and_nothing_else_does() {
        Seen pack = new Seen(PACK);
        Progress fresh = step(0, pack);
        Progress shown = fresh.with(fresh.carried().showed(0));

        assertThat(wished(next(new RunState.Waiting(fresh, NOW, NOW, false), pack, PLAIN))).isEqualTo(Closing.NO_LOAD);
        assertThat(wished(next(new RunState.Waiting(shown, NOW, NOW, false), pack, PLAIN))).isEqualTo(Closing.PRECHARGE);
        for (Step out : List.of(new Step.Discharge(1, 10.5, 2.5), new Step.HeatRun(2, 75, 2.5, HOUR))) {
            assertThat(wished(next(new RunState.Waiting(fresh, NOW, NOW, false), pack, out))).isEqualTo(Closing.PRECHARGE);
        }
        assertThat(wished(next(waiting(NOW, NOW, false), cell()))).as("a source that is told its voltage").isEqualTo(Closing.PRECHARGE);
    }

    @Test
    void low_cells_need_a_start_of_their_own() {
        assertThat(RunMachine.start(new Program("test", false, List.of(REST, new Step.Recover(0, 2.1, 2.8))))).isEqualTo(Request.RECOVER);
        assertThat(RunMachine.start(new Program("test", false, List.of(CHARGE, REST)))).isEqualTo(Request.START);
    }

    private static Next showing(double before, long steady, boolean off, Seen seen) {
        return next(new RunState.Showing(step(0, seen), before, steady, off), seen, PLAIN);
    }

    /** Half a percent, two seconds. */
    @Test
    void a_source_has_shown_its_voltage_when_it_stood_still_for_two_seconds_above_the_pack() {
        Seen stands = new Seen(PACK).set(Role.BUS_VOLTS, 28);
        Next shown = showing(28, NOW - 2 * SECOND, false, stands);
        assertThat(shown.events()).containsExactly(new Event.NoLoadShown("charger", 28));
        assertThat(shown.wish()).isEqualTo(Wish.NOTHING);
        assertThat(((RunState.Showing) shown.state()).off()).isTrue();
        assertThat(((RunState.Showing) shown.state()).progress().carried().shown()).containsExactly(0);

        Next soon = showing(28, NOW - 2 * SECOND + 1, false, stands);
        assertThat(soon.events()).isEmpty();
        assertThat(((RunState.Showing) soon.state()).steadyNanos()).isEqualTo(NOW - 2 * SECOND + 1);
        assertThat(wished(soon)).isEqualTo(Closing.NO_LOAD);
        assertThat(showing(28.139, NOW - 2 * SECOND, false, stands).events()).as("half a percent").hasSize(1);

        Seen eighth = new Seen(PACK).set(Role.PACK_VOLTS, 25).set(Role.BUS_VOLTS, 25);
        assertThat(showing(25 - 0.125, NOW - 2 * SECOND, false, eighth).events()).as("half a percent to the bit").hasSize(1);
        assertThat(showing(Math.nextDown(25 - 0.125), NOW - 2 * SECOND, false, eighth).events()).isEmpty();

        Next moved = showing(28.2, NOW - 2 * SECOND, false, stands);
        assertThat(moved.events()).isEmpty();
        assertThat(((RunState.Showing) moved.state()).volts()).isEqualTo(28);
        assertThat(((RunState.Showing) moved.state()).steadyNanos()).isEqualTo(NOW);
        assertThat(showing(27.8, NOW - 2 * SECOND, false, stands).events()).isEmpty();
        assertThat(showing(20, NOW - 2 * SECOND, false, new Seen(PACK).set(Role.BUS_VOLTS, 20)).events()).as("below the pack").isEmpty();
        Next unseen = showing(28, NOW - 2 * SECOND, false, new Seen(PACK).failed(Role.BUS_VOLTS));
        assertThat(((RunState.Showing) unseen.state()).steadyNanos()).as("unseen it does not stand").isEqualTo(NOW);
    }

    @Test
    void after_it_was_shown_the_bus_must_empty_before_the_step_goes_on() {
        assertThat(showing(28, NOW, true, new Seen(PACK)).state()).isInstanceOf(RunState.Waiting.class);
        Next full = showing(28, NOW - 5, true, new Seen(PACK).set(Role.BUS_VOLTS, 28));
        assertThat(full.state()).isInstanceOfSatisfying(RunState.Showing.class, s -> {
            assertThat(s.off()).isTrue();
            assertThat(s.volts()).isEqualTo(28);
        });
        assertThat(full.wish()).isEqualTo(Wish.NOTHING);
    }

    private static Next closing(Closing stage, long forNanos, Verdict verdict, Seen seen) {
        return next(new RunState.Closes(step(0, seen), stage, NOW - forNanos), verdict, seen, Inbox.EMPTY);
    }

    private static Seen closed() {
        return cell().set(Role.BUS_VOLTS, 3.3).set(Role.FEEDBACK, 1).set(Role.COIL_FEED, 1);
    }

    @Test
    void the_contact_follows_a_full_bus_and_a_steady_scan() {
        assertThat(wished(closing(Closing.PRECHARGE, 0, HEALTHY, cell().set(Role.BUS_VOLTS, 3.3)))).isEqualTo(Closing.CONTACT);
        assertThat(wished(closing(Closing.PRECHARGE, 0, HEALTHY, cell()))).isEqualTo(Closing.PRECHARGE);
        assertThat(wished(closing(Closing.PRECHARGE, 0, healthy(50, false), cell().set(Role.BUS_VOLTS, 3.3)))).isEqualTo(Closing.PRECHARGE);
        Next still = closing(Closing.PRECHARGE, 5, HEALTHY, cell());
        assertThat(((RunState.Closes) still.state()).stageNanos()).isEqualTo(NOW - 5);
    }

    @Test
    void a_second_after_its_feedback_the_contact_is_proved_by_silence_once() {
        assertThat(wished(closing(Closing.CONTACT, SECOND, HEALTHY, closed()))).isEqualTo(Closing.SILENCE);
        assertThat(wished(closing(Closing.CONTACT, SECOND - 1, HEALTHY, closed()))).isEqualTo(Closing.CONTACT);
        assertThat(wished(closing(Closing.CONTACT, 2 * SECOND, HEALTHY, closed().set(Role.FEEDBACK, 0)))).isEqualTo(Closing.CONTACT);
        Progress proved = step(0, cell()).with(step(0, cell()).carried().proved());
        Next current = next(new RunState.Closes(proved, Closing.CONTACT, NOW - SECOND), closed());
        assertThat(wished(current)).isEqualTo(Closing.CURRENT);

        assertThat(wished(closing(Closing.SILENCE, 700_000_000L, HEALTHY, closed()))).isEqualTo(Closing.SILENCE);
        Next open = closing(Closing.SILENCE, 700_000_000L, HEALTHY, cell());
        assertThat(open.events()).singleElement().isInstanceOfSatisfying(Event.HeartbeatProved.class,
                e -> assertThat(e.seconds()).isCloseTo(0.7, within(1e-12)));
        assertThat(((RunState.Waiting) open.state()).progress().carried().heartbeats()).isEqualTo(1);
    }

    @Test
    void a_proof_withholds_beats_twice_before_any_current() {
        Step.ProveStop stop = new Step.ProveStop(0, 5, Step.Element.RELAY);
        Progress fresh = step(0, cell());
        Progress once = fresh.with(fresh.carried().proved());
        Progress twice = once.with(once.carried().proved());

        assertThat(wished(next(new RunState.Closes(fresh, Closing.CONTACT, NOW - SECOND), closed(), stop))).isEqualTo(Closing.SILENCE);
        assertThat(wished(next(new RunState.Closes(once, Closing.CONTACT, NOW - SECOND), closed(), stop))).isEqualTo(Closing.SILENCE);
        assertThat(wished(next(new RunState.Closes(twice, Closing.CONTACT, NOW - SECOND), closed(), stop))).isEqualTo(Closing.CURRENT);
    }

    @Test
    void a_ceiling_of_nothing_opens_and_a_blind_scan_keeps_the_order_within_the_ceiling() {
        Seen flows = closed().set(Role.CURRENT, 10);
        assertThat(next(new RunState.Stepping(step(0, flows)), healthy(0, true), flows, Inbox.EMPTY).state())
                .isInstanceOfSatisfying(RunState.Opening.class, s -> assertThat(s.by()).isEmpty());
        Seen blind = closed().set(Role.CURRENT, 10).failed(Role.CELL_VOLTS);
        Next kept = next(new RunState.Stepping(step(0, blind)), blind);
        assertThat(((Wish.Path) kept.wish()).set().amps()).isEqualTo(10);
        Next lower = next(new RunState.Stepping(step(0, blind)), healthy(4, true), blind, Inbox.EMPTY);
        assertThat(((Wish.Path) lower.wish()).set().amps()).isEqualTo(4);
    }

    private static RunState.Opening opening(boolean off, long forNanos, Optional<Ended> by) {
        return new RunState.Opening(step(0, cell()), by, off, NOW - forNanos);
    }

    @Test
    void a_path_opens_without_current_or_after_three_seconds_of_waiting_for_that() {
        Seen flows = closed().set(Role.CURRENT, 10);
        Optional<Ended> taper = Optional.of(Ended.TAPER);
        Next waits = next(opening(false, 3 * SECOND - 1, taper), flows);
        assertThat(((Wish.Path) waits.wish()).set().amps()).isZero();
        assertThat(((RunState.Opening) waits.state()).sinceNanos()).isEqualTo(NOW - 3 * SECOND + 1);
        assertThat(next(opening(false, 3 * SECOND, taper), flows).wish()).isEqualTo(Wish.NOTHING);
        assertThat(next(opening(false, 0, taper), closed()).wish()).isEqualTo(Wish.NOTHING);
    }

    @Test
    void a_step_is_over_only_open_without_current_and_seen() {
        Optional<Ended> taper = Optional.of(Ended.TAPER);
        for (Seen seen : List.of(closed(), cell().set(Role.CURRENT, 2), cell().failed(Role.CELL_VOLTS))) {
            Next waits = next(opening(true, SECOND, taper), seen);
            assertThat(waits.wish()).isEqualTo(Wish.NOTHING);
            assertThat(waits.state()).isInstanceOfSatisfying(RunState.Opening.class, o -> {
                assertThat(o.off()).isTrue();
                assertThat(o.by()).isEqualTo(taper);
                assertThat(o.sinceNanos()).isEqualTo(NOW - SECOND);
            });
        }
        Next over = next(opening(true, SECOND, taper), cell());
        assertThat(over.state()).isInstanceOf(RunState.Resting.class);
        assertThat(over.events()).hasSize(2).last().isEqualTo(new Event.StepBegun(2, "rest"));
        assertThat(over.events().getFirst()).isInstanceOfSatisfying(Event.StepEnded.class, e -> assertThat(e.step()).isEqualTo(1));
    }

    @Test
    void only_a_discharge_to_its_cut_off_is_carried_as_what_was_measured() {
        Step discharge = new Step.Discharge(1, 10.5, 2.5);
        assertThat(carried(Ended.CUT_OFF, discharge)).isCloseTo(100, within(0.01));
        assertThat(carried(Ended.TIME, discharge)).isZero();
        assertThat(carried(Ended.CUT_OFF, new Step.Pulse(1, 5, SECOND, 50, SECOND))).isZero();
    }

    private static double carried(Ended by, Step step) {
        Seen seen = cell();
        seen.ampHours = -100;
        Next over = next(new RunState.Opening(step(0, seen), Optional.of(by), true, NOW), seen, step, REST);
        return ((RunState.Resting) over.state()).progress().carried().measuredAmpHours();
    }

    @Test
    void a_pause_lasts_five_minutes_and_the_second_idle_one_is_the_end() {
        Seen moved = cell();
        moved.ampHours = 5;
        Next pause = next(new RunState.Opening(step(0, moved), Optional.empty(), true, NOW), moved);
        assertThat(((RunState.Waiting) pause.state()).notBeforeNanos()).isEqualTo(NOW + 300 * SECOND);
        Next idle = next(new RunState.Opening(step(0, cell()), Optional.empty(), true, NOW), cell());
        assertThat(((RunState.Waiting) idle.state()).progress().idle()).isEqualTo(1);
        assertThat(idleAfter(0.104)).as("less than a thousandth of 105 Ah").isEqualTo(1);
        assertThat(idleAfter(0.106)).isZero();
        Progress once = ((RunState.Waiting) idle.state()).progress();
        assertThat(next(new RunState.Opening(once, Optional.empty(), true, NOW), cell()).state())
                .isEqualTo(new RunState.Finished(Ended.NEVER_FIT, 0));
    }

    private static int idleAfter(double ampHours) {
        Seen seen = cell();
        seen.ampHours = ampHours;
        Next pause = next(new RunState.Opening(step(0, seen), Optional.empty(), true, NOW), seen);
        return ((RunState.Waiting) pause.state()).progress().idle();
    }

    @Test
    void a_rest_is_marked_once_a_minute() {
        Next first = next(new RunState.Resting(step(1, cell())), cell());
        Still marks = ((RunState.Resting) first.state()).progress().still();
        Next again = next(new RunState.Resting(step(1, cell()).with(marks)), cell());

        assertThat(marks.due(NOW)).isFalse();
        assertThat(marks.due(NOW + 60 * SECOND)).isTrue();
        assertThat(((RunState.Resting) again.state()).progress().still()).isSameAs(marks);
    }

    private static Next resting(long forNanos, boolean still, Seen seen) {
        seen.since = NOW - forNanos;
        Progress progress = step(1, seen);
        Still marks = Still.EMPTY;
        for (int i = 0; i <= 10 && still; i++) {
            marks = marks.with(NOW - (11 - i) * 60L * SECOND, new double[] {3.3});
        }
        return next(new RunState.Resting(progress.with(marks)), seen);
    }

    @Test
    void a_rest_settles_from_its_least_time_on_and_ends_unsettled_at_its_most() {
        assertThat(resting(1800 * SECOND, true, cell()).events().getFirst())
                .isInstanceOfSatisfying(Event.StepEnded.class, e -> assertThat(e.by()).isEqualTo(Ended.SETTLED));
        assertThat(resting(1800 * SECOND - 1, true, cell()).state()).isInstanceOf(RunState.Resting.class);
        assertThat(resting(3 * HOUR - 1, false, cell()).state()).isInstanceOf(RunState.Resting.class);
        Next over = resting(3 * HOUR, false, cell());
        assertThat(over.state()).isEqualTo(new RunState.Finished(Ended.TIME, 0));
        assertThat(over.events().getLast()).isEqualTo(new Event.Finished(Ended.TIME));
        assertThat(resting(3 * HOUR, false, cell().failed(Role.CELL_VOLTS)).state()).as("unseen").isInstanceOf(RunState.Resting.class);
    }

    /** Between two scans the mean of both counts: current, power, voltage. */
    @Test
    void an_account_is_a_trapezoid_between_two_whole_scans() {
        Seen flows = closed().set(Role.CURRENT, 10).set(Role.CELL_VOLTS, 3.4);
        Progress p = step(0, flows);
        Progress before = p.accounted(Account.EMPTY, new Progress.Point(NOW - 2 * SECOND, 6, 20, 3.2), p.flowedNanos(), p.window(), p.top());
        Next next = next(new RunState.Stepping(before), flows);
        Progress after = ((RunState.Stepping) next.state()).progress();

        assertThat(after.account()).isEqualTo(new Account(2 * SECOND, 16_000_000_000L, 0, 54_000_000L, 0, 6_600_000L));
        assertThat(after.flowedNanos()).isEqualTo(NOW);
        Seen none = closed().set(Role.CURRENT, 0.5);
        none.flowed = 77;
        Next quiet = next(new RunState.Stepping(step(0, none)), none);
        assertThat(((RunState.Stepping) quiet.state()).progress().flowedNanos()).isEqualTo(77);
    }
}
