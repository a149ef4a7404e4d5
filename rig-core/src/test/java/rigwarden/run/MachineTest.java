package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rigwarden.program.Ended;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Closing;
import rigwarden.warden.Failure;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Request;

/** In an obedient world each programme finishes, by the ends that the safety page names; figures are the page's. */
class MachineTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final long SECOND = 1_000_000_000L;
    private static final long MINUTE = 60 * SECOND;
    private static final long HOUR = 60 * MINUTE;
    private static final Step.Charge CHARGE = new Step.Charge(SOURCE, 21, 3.60, 5.25);
    private static final Step.Rest REST = new Step.Rest(30 * MINUTE, 180 * MINUTE);
    private static final Step.Discharge DISCHARGE = new Step.Discharge(SINK, 10.5, 2.50);

    @Test
    void a_whole_night_ends_step_by_step_and_parks_at_a_share_of_what_was_measured() {
        ObedientRig night = new ObedientRig(CELL, 0.5, CHARGE, REST, DISCHARGE, REST, new Step.Park(SOURCE, 21, 0.4, 3.60));

        assertThat(night.run()).containsExactly(Ended.TAPER, Ended.SETTLED, Ended.CUT_OFF, Ended.SETTLED, Ended.CHARGE_REACHED);

        double measured = -night.endedAmpHours(3);
        assertThat(measured).isBetween(0.97 * 105, 1.0 * 105);
        assertThat(night.endedAmpHours(5)).isCloseTo(0.4 * measured, within(0.05));
        assertThat(night.events.stream().filter(e -> e instanceof Event.HeartbeatProved)).as("once in a run").hasSize(1);
        assertThat(night.events.getLast()).isEqualTo(new Event.Finished(Ended.TIME));
    }

    @Test
    void a_charge_holds_its_current_to_the_ceiling_and_then_the_ceiling_by_less_and_less_current() {
        ObedientRig charge = new ObedientRig(CELL, 0.9, CHARGE).reach(RunState.Stepping.class);
        List<Double> orders = new ArrayList<>();
        double[] highest = {0};
        charge.until(() -> {
            charge.order().ifPresent(orders::add);
            highest[0] = Math.max(highest[0], charge.volts(0));
            return !(charge.state instanceof RunState.Stepping);
        });

        assertThat(orders.getFirst()).isEqualTo(21);
        assertThat(highest[0]).isCloseTo(3.60, within(0.005));
        assertThat(orders).as("falls, and is not raised again by more than the control needs").allMatch(amps -> amps <= 21);
        assertThat(orders.stream().filter(amps -> amps < 5.25)).as("does not linger below its taper").hasSizeLessThan(20);
        assertThat(charge.run()).containsExactly(Ended.TAPER);
    }

    @Test
    void the_instruments_own_limits_lie_behind_the_programme() {
        ObedientRig charge = new ObedientRig(CELL, 0.5, CHARGE).reach(RunState.Stepping.class);
        assertThat(((Orders.Energised) charge.orders).set().volts()).isCloseTo(3.65, within(1e-9));

        ObedientRig discharge = new ObedientRig(CELL, 0.5, DISCHARGE).reach(RunState.Stepping.class);
        assertThat(((Orders.Energised) discharge.orders).set().volts()).isCloseTo(2.40, within(1e-9));
    }

    @Test
    void a_pulse_is_two_currents_for_their_times() {
        ObedientRig pulse = new ObedientRig(CELL, 0.5, new Step.Pulse(SINK, 5, 20 * SECOND, 50, 10 * SECOND))
                .reach(RunState.Stepping.class);
        long began = pulse.nanos;
        long[] higher = {0};
        pulse.until(() -> {
            if (higher[0] == 0 && pulse.order().orElse(0) == 50) {
                higher[0] = pulse.nanos;
            }
            return !(pulse.state instanceof RunState.Stepping);
        });

        assertThat((higher[0] - began) * 1e-9).isCloseTo(20, within(1.2));
        assertThat((pulse.nanos - began) * 1e-9).isCloseTo(30, within(1.2));
        assertThat(pulse.run()).containsExactly(Ended.TIME);
    }

    @Test
    void a_pulse_ends_early_at_either_edge_of_the_cell() {
        assertThat(new ObedientRig(CELL, 0.985, new Step.Pulse(SOURCE, 5, 20 * SECOND, 50, 60 * SECOND)).run())
                .containsExactly(Ended.CEILING);
        assertThat(new ObedientRig(CELL, 0.006, new Step.Pulse(SINK, 2, 20 * SECOND, 10, 60 * SECOND)).run())
                .containsExactly(Ended.CUT_OFF);
    }

    @Test
    void cells_in_parallel_are_balanced_when_hardly_any_current_has_flowed_for_as_long_as_asked() {
        ObedientRig balance = new ObedientRig(CELL, 0.97, new Step.Balance(SOURCE, 10, 3.60, 0.5, 20 * MINUTE));
        long[] small = {0};
        balance.until(() -> {
            boolean at = balance.order().orElse(9) <= 0.5 && balance.state instanceof RunState.Stepping;
            small[0] = at && small[0] == 0 ? balance.nanos : small[0];
            return balance.state instanceof RunState.Finished;
        });

        assertThat(balance.ends()).containsExactly(Ended.TAPER);
        assertThat((balance.nanos - small[0]) / (double) MINUTE).isCloseTo(20, within(1.5));
    }

    @Test
    void a_cell_is_recovered_as_far_as_asked_and_no_faster_than_a_twentieth() {
        ObedientRig recover = new ObedientRig(CELL, 0.003, new Step.Recover(SOURCE, 5.25, 3.0)).reach(RunState.Stepping.class);
        assertThat(recover.order().orElseThrow()).isEqualTo(5.25);

        assertThat(recover.run()).containsExactly(Ended.CHARGE_REACHED);
        assertThat(recover.volts(0)).isCloseTo(3.0, within(0.01));
    }

    @Test
    void an_approach_to_the_protection_ends_at_its_own_limit_when_nothing_opens() {
        assertThat(new ObedientRig(CELL, 0.98, new Step.ProveProtection(SOURCE, 5, 3.62)).run()).containsExactly(Ended.CEILING);
        assertThat(new ObedientRig(CELL, 0.05, new Step.ProveProtection(SINK, 5, 2.60)).run()).containsExactly(Ended.CUT_OFF);
    }

    @Test
    void a_rest_of_cells_that_go_on_moving_ends_by_its_time() {
        ObedientRig rest = new ObedientRig(CELL, 0.5, REST);
        long began = rest.nanos;
        rest.twist = scans -> scans.set(Role.CELL_VOLTS, 3.3 - (rest.nanos - began) * 1e-9 / 3600 * 0.03)
                .set(Role.PACK_VOLTS, 3.3 - (rest.nanos - began) * 1e-9 / 3600 * 0.03);

        assertThat(rest.run()).containsExactly(Ended.TIME);
        assertThat((rest.nanos - began) / (double) MINUTE).isCloseTo(180, within(1.0));
    }

    @Test
    void a_rest_of_cells_that_are_not_at_the_room_s_temperature_ends_by_its_time() {
        ObedientRig rest = new ObedientRig(CELL, 0.5, REST).reach(RunState.Resting.class);
        rest.twist = scans -> scans.set(Role.BODY, 24.5);

        assertThat(rest.run()).containsExactly(Ended.TIME);
    }

    @Test
    void a_settled_rest_takes_at_least_its_least_time() {
        ObedientRig rest = new ObedientRig(CELL, 0.5, REST);
        long began = rest.nanos;

        assertThat(rest.run()).containsExactly(Ended.SETTLED);
        assertThat((rest.nanos - began) / (double) MINUTE).isCloseTo(30, within(0.5));
    }

    @Test
    void a_cell_too_cold_to_charge_is_waited_for_once_said_and_at_most_eight_hours() {
        ObedientRig cold = new ObedientRig(CELL, 0.5, CHARGE);
        cold.twist = scans -> scans.set(Role.BODY, 9);
        cold.until(() -> cold.events.stream().anyMatch(e -> e instanceof Event.Waited));
        for (int i = 0; i < 100; i++) {
            cold.scan(1, Inbox.EMPTY);
        }
        assertThat(cold.events.stream().filter(e -> e instanceof Event.Waited)).containsExactly(new Event.Waited(1, 9));

        cold.twist = scans -> scans;
        cold.reach(RunState.Stepping.class);
        assertThat(cold.run()).containsExactly(Ended.TAPER);

        ObedientRig frozen = new ObedientRig(CELL, 0.5, CHARGE);
        frozen.twist = scans -> scans.set(Role.BODY, 9);
        long began = frozen.nanos;
        assertThat(frozen.run()).containsExactly(Ended.NEVER_FIT);
        assertThat((frozen.nanos - began) / (double) HOUR).isCloseTo(8, within(0.01));
    }

    @Test
    void a_cell_that_becomes_too_warm_pauses_its_charge_for_five_minutes_and_the_account_goes_on() {
        ObedientRig warm = new ObedientRig(CELL, 0.5, CHARGE).reach(RunState.Stepping.class);
        warm.until(() -> warm.ampHours[0] > 60);
        warm.twist = scans -> scans.set(Role.BODY, 41).set(Role.STUD, 30);
        warm.reach(RunState.Waiting.class);
        long paused = warm.nanos;
        warm.twist = scans -> scans;
        warm.reach(RunState.Stepping.class);

        assertThat((warm.nanos - paused) * 1e-9).isBetween(300.0, 310.0);
        assertThat(warm.run()).containsExactly(Ended.TAPER);
        assertThat(warm.endedAmpHours(1)).isCloseTo(warm.ampHours[0] - 52.5, within(0.05));
    }

    @Test
    void a_step_that_pauses_twice_with_hardly_anything_moved_between_is_given_up() {
        ObedientRig warm = new ObedientRig(CELL, 0.5, CHARGE);
        long[] flowing = {0};
        warm.twist = scans -> {
            flowing[0] = warm.state instanceof RunState.Stepping ? flowing[0] + 1 : 0;
            return flowing[0] > 20 ? scans.set(Role.BODY, 41).set(Role.STUD, 30) : scans;
        };

        assertThat(warm.run()).containsExactly(Ended.NEVER_FIT);
        assertThat(warm.nanos / (double) MINUTE).as("one pause of five minutes").isBetween(5.0, 8.0);
        assertThat(warm.orders).isInstanceOf(Orders.Off.class);
    }

    @Test
    void a_discharge_that_takes_a_quarter_longer_than_the_rating_ends_by_its_time() {
        ObedientRig slow = new ObedientRig(CELL, 0.9, DISCHARGE);
        slow.flows = (_, on) -> on.set().amps() * 0.5;
        long began = slow.nanos;

        assertThat(slow.run()).containsExactly(Ended.TIME);
        assertThat((slow.nanos - began) / (double) HOUR).isCloseTo(12.5, within(0.02));
    }

    @Test
    void a_scan_without_the_cell_keeps_the_order_and_the_account_bridges_it() {
        ObedientRig blind = new ObedientRig(CELL, 0.5, DISCHARGE).reach(RunState.Stepping.class);
        Channel cell = CELL.channel(Role.CELL_VOLTS);
        int[] scans = {0};
        blind.twist = s -> scans[0]++ % 50 == 0 ? s.failed(cell, Failure.NO_ANSWER, s.nanos()) : s;
        double before = blind.ampHours[0];
        blind.until(() -> blind.ampHours[0] < before - 5);
        assertThat(blind.order().orElseThrow()).isEqualTo(10.5);
        blind.stop();

        assertThat(blind.endedAmpHours(1)).isCloseTo(-5, within(0.02));
    }

    @Test
    void current_goes_to_zero_before_the_contactor_opens() {
        ObedientRig night = new ObedientRig(CELL, 0.1, DISCHARGE, REST).reach(RunState.Opening.class);

        assertThat(night.order().orElse(9)).as("still closed, nothing ordered").isZero();
        night.scan(0.1, Inbox.EMPTY);
        assertThat(night.amps()).isZero();
        night.scan(0.1, Inbox.EMPTY);
        assertThat(night.orders).isInstanceOf(Orders.Off.class);
    }

    @TestFactory
    Stream<DynamicTest> stop_ends_the_run_from_every_state_and_says_how_far_the_step_was() {
        return Stream.of(RunState.Proving.class, RunState.Waiting.class, RunState.Closes.class, RunState.Stepping.class,
                RunState.Opening.class, RunState.Resting.class).map(state -> DynamicTest.dynamicTest(state.getSimpleName(), () -> {
                    ObedientRig night = new ObedientRig(CELL, 0.1, DISCHARGE, REST).reach(state);
                    night.events.clear();

                    night.stop();

                    assertThat(night.state).isEqualTo(new RunState.Finished(Ended.STOPPED, 0));
                    assertThat(night.orders).isInstanceOf(Orders.Off.class);
                    assertThat(night.events.getFirst()).isEqualTo(new Event.StopRequested());
                    assertThat(night.events.getLast()).isEqualTo(new Event.Finished(Ended.STOPPED));
                    assertThat(night.ends()).hasSize(state == RunState.Proving.class ? 0 : 1).allMatch(Ended.STOPPED::equals);
                }));
    }

    @TestFactory
    Stream<DynamicTest> a_trip_interrupts_from_every_state_and_only_a_clear_leads_back_to_idle() {
        return Stream.of(RunState.Proving.class, RunState.Waiting.class, RunState.Closes.class, RunState.Stepping.class,
                RunState.Opening.class, RunState.Resting.class).map(state -> DynamicTest.dynamicTest(state.getSimpleName(), () -> {
                    ObedientRig night = new ObedientRig(CELL, 0.1, DISCHARGE, REST).reach(state);
                    int step = RunState.step(night.state);
                    night.events.clear();
                    night.twist = scans -> scans.set(Role.LOOP, 0);
                    night.scan(0.1, Inbox.EMPTY);

                    assertThat(night.state).isEqualTo(new RunState.Interrupted(step, 1));
                    assertThat(night.events.getFirst()).isInstanceOf(Event.Tripped.class);
                    assertThat(night.ends()).hasSize(step == 0 ? 0 : 1).allMatch(Ended.TRIPPED::equals);

                    night.twist = scans -> scans.set(Role.LOOP, 0).set(Role.RECORDER_LAG, 11);
                    night.scan(0.1, Inbox.EMPTY);
                    assertThat(night.state).as("a second one is told too").isEqualTo(new RunState.Interrupted(step, 2));

                    night.twist = scans -> scans;
                    for (int i = 0; i < 100; i++) {
                        night.scan(0.1, Inbox.EMPTY);
                    }
                    assertThat(night.state).isInstanceOf(RunState.Interrupted.class);
                    night.ask(Request.CLEAR);
                    assertThat(night.state).isEqualTo(RunState.IDLE);
                    assertThat(night.events.getLast()).isEqualTo(new Event.Cleared());
                }));
    }

    @Test
    void nothing_starts_without_the_arm_key() {
        ObedientRig idle = new ObedientRig(CELL, 0.5, CHARGE);
        idle.stop();
        ObedientRig other = new ObedientRig(CELL, 0.5, CHARGE);
        other.state = RunState.IDLE;
        other.twist = scans -> scans.set(Role.ARM, 0);
        other.ask(Request.START);
        assertThat(other.state).isEqualTo(RunState.IDLE);

        other.twist = scans -> scans;
        other.ask(Request.START);
        assertThat(other.state).isEqualTo(new RunState.Proving(0));
    }

    @Test
    void twenty_quiet_scans_come_before_the_first_step_and_one_bad_scan_begins_them_anew() {
        ObedientRig night = new ObedientRig(CELL, 0.5, CHARGE);
        for (int i = 0; i < 10; i++) {
            night.scan(0.1, Inbox.EMPTY);
        }
        assertThat(night.state).isEqualTo(new RunState.Proving(10));
        night.twist = scans -> scans.failed(CELL.channel(Role.CELL_VOLTS), Failure.NO_ANSWER, scans.nanos());
        night.scan(0.1, Inbox.EMPTY);
        assertThat(night.state).isEqualTo(new RunState.Proving(0));
    }

    @Test
    void the_path_closes_through_its_stages_in_order() {
        ObedientRig night = new ObedientRig(CELL, 0.5, CHARGE);
        List<Closing> stages = new ArrayList<>();
        night.until(() -> {
            if (night.orders instanceof Orders.Energised on && (stages.isEmpty() || stages.getLast() != on.stage())) {
                stages.add(on.stage());
            }
            return night.state instanceof RunState.Stepping;
        });

        assertThat(stages).containsExactly(Closing.PRECHARGE, Closing.CONTACT, Closing.SILENCE, Closing.PRECHARGE,
                Closing.CONTACT, Closing.CURRENT);
    }
}
