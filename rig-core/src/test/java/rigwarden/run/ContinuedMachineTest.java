package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.run.Answer.Condition;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Request;
import rigwarden.warden.Swing;
import rigwarden.warden.Verdict;

/** A run that was broken off goes on in the middle of its step, and only where everything speaks for it. */
class ContinuedMachineTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final long MINUTE = 60_000_000_000L;
    private static final Step.Charge CHARGE = new Step.Charge(0, 21, 3.60, 5.25);
    private static final Step.Rest REST = new Step.Rest(30 * MINUTE, 180 * MINUTE);
    private static final Step.Discharge DISCHARGE = new Step.Discharge(1, 21, 2.50);
    private static final Program NIGHT = new Program("night", false,
            List.of(CHARGE, REST, DISCHARGE, REST, new Step.Park(0, 21, 0.4, 3.60)));

    /** A run of the night, so far into a step. */
    private static ObedientRig brokenOff(int step, double hours) {
        ObedientRig first = new ObedientRig(CELL, NIGHT, Optional.empty(), true, ObedientRig.filled(CELL, 0.8));
        first.ask(Request.START);
        first.until(() -> RunState.step(first.state) == step
                && (first.state instanceof RunState.Stepping || first.state instanceof RunState.Resting));
        long since = first.nanos;
        first.until(() -> first.nanos - since >= hours * 3600e9);
        return first;
    }

    private static PickUp place(ObedientRig first, double outageMinutes) {
        return first.retrace.orElseThrow().place().orElseThrow().brokenAt(-Math.round(outageMinutes * 60e9));
    }

    private static ObedientRig goesOn(ObedientRig first, PickUp from) {
        ObedientRig second = new ObedientRig(CELL, NIGHT, Optional.of(from), true, first.ampHours);
        second.ask(Request.CONTINUE);
        return second;
    }

    private static Optional<Condition> unmet(ObedientRig rig) {
        return rig.events.stream().filter(Event.NotContinued.class::isInstance)
                .map(e -> ((Event.NotContinued) e).unmet().condition()).findFirst();
    }

    @Test
    void a_discharge_goes_on_where_it_was_and_both_parts_together_are_the_capacity() {
        ObedientRig whole = new ObedientRig(CELL, 0.8, NIGHT.steps().toArray(Step[]::new));
        whole.run();
        ObedientRig first = brokenOff(3, 2);
        PickUp from = place(first, 10);

        ObedientRig second = goesOn(first, from);
        List<Ended> ends = second.run();

        assertThat(from.step()).isEqualTo(3);
        assertThat(from.before().ampHours()).isCloseTo(-42, within(0.2));
        assertThat(ends).containsExactly(Ended.CUT_OFF, Ended.SETTLED, Ended.CHARGE_REACHED);
        assertThat(from.before().ampHours() + second.endedAmpHours(3)).isCloseTo(whole.endedAmpHours(3), within(0.1));
        assertThat(second.endedAmpHours(5)).as("parked by the whole, not by the part")
                .isCloseTo(-0.4 * whole.endedAmpHours(3), within(0.1));
    }

    @Test
    void it_says_so_passes_the_start_up_and_proves_the_heartbeat_again() {
        ObedientRig first = brokenOff(3, 2);

        ObedientRig second = goesOn(first, place(first, 10));
        long asked = second.nanos;
        second.reach(RunState.Waiting.class);
        long begun = second.nanos;
        second.run();

        assertThat((begun - asked) * 1e-9).as("twenty healthy scans").isGreaterThanOrEqualTo(1.9);
        assertThat(second.events).filteredOn(Event.HeartbeatProved.class::isInstance).hasSize(1);
        assertThat(second.events.stream().limit(3)).satisfiesExactly(
                e -> assertThat(e).isInstanceOf(Event.Started.class),
                e -> assertThat(e).isInstanceOfSatisfying(Event.Continued.class, on -> {
                    assertThat(on.run()).isEqualTo(1);
                    assertThat(on.step()).isEqualTo(3);
                    assertThat(on.outageSeconds()).isBetween(600.0, 620.0);
                }),
                e -> assertThat(e).isEqualTo(new Event.StepBegun(3, "discharge")));
    }

    @Test
    void a_charge_at_its_ceiling_keeps_the_time_that_its_taper_has_had() {
        ObedientRig first = brokenOff(1, 0);
        first.until(() -> Glimpse.metCeiling(first.state));
        long met = first.nanos;
        first.until(() -> first.nanos - met > 5 * 1_000_000_000L);

        PickUp from = place(first, 1);

        assertThat(from.topNanos() * 1e-9).isBetween(4.0, 8.0);
        assertThat(goesOn(first, from).run().getFirst()).isEqualTo(Ended.TAPER);
    }

    @Test
    void a_rest_goes_on_for_what_was_left_of_it() {
        ObedientRig first = brokenOff(2, 0.4);

        ObedientRig second = goesOn(first, place(first, 10));
        second.reach(RunState.Resting.class);
        long since = second.nanos;
        second.until(() -> RunState.step(second.state) == 3);

        assertThat((second.nanos - since) / 60e9).as("of thirty minutes, ten of them looked at").isBetween(9.9, 10.5);
    }

    @Test
    void nothing_goes_on_by_itself_nor_by_a_start_nor_without_the_arm_key() {
        ObedientRig first = brokenOff(3, 2);
        ObedientRig second = new ObedientRig(CELL, NIGHT, Optional.of(place(first, 10)), false, first.ampHours);

        second.ask(Request.START);
        IntStream.range(0, 600).forEach(_ -> second.scan(0.1, Inbox.EMPTY));
        second.twist = scans -> scans.set(Role.ARM, 0);
        second.ask(Request.CONTINUE);
        second.scan(0.1, Inbox.EMPTY);

        assertThat(second.state).isEqualTo(RunState.IDLE);
        assertThat(second.orders).isEqualTo(Orders.OFF);
        assertThat(second.events).isEmpty();
    }

    @Test
    void an_outage_that_becomes_too_long_while_the_rig_is_looked_at_is_too_long() {
        ObedientRig first = brokenOff(3, 1);
        List<ObedientRig> asked = IntStream.range(0, 30).mapToObj(half -> goesOn(first, place(first, 30 - half / 120.0))).toList();

        List<ObedientRig> inTimeThen = asked.stream()
                .filter(rig -> rig.run().isEmpty() && rig.events.stream().anyMatch(Event.Started.class::isInstance)).toList();
        assertThat(inTimeThen).as("in time when asked for, two seconds of scans before").hasSizeBetween(3, 5)
                .allSatisfy(rig -> assertThat(unmet(rig)).contains(Condition.OUTAGE));
    }

    @Test
    void an_outage_of_more_than_thirty_minutes_is_too_long_even_when_it_was_not_at_the_beginning() {
        ObedientRig first = brokenOff(3, 2);

        assertThat(unmet(goesOn(first, place(first, 29.8)))).isEmpty();
        ObedientRig late = goesOn(first, place(first, 29.9));

        assertThat(unmet(late)).contains(Condition.OUTAGE);
        assertThat(late.run()).isEmpty();
        assertThat(late.state).isEqualTo(new RunState.Finished(Ended.NOT_CONTINUED, 0));
    }

    @Test
    void a_cell_that_does_not_rest_where_the_account_says_stops_it_before_anything_is_energised() {
        ObedientRig first = brokenOff(3, 2);
        PickUp from = place(first, 10);
        ObedientRig emptied = new ObedientRig(CELL, NIGHT, Optional.of(from), false, 0.01 * 105);
        emptied.ask(Request.CONTINUE);
        ObedientRig filled = new ObedientRig(CELL, NIGHT, Optional.of(from), false, 0.999 * 105);
        filled.ask(Request.CONTINUE);

        assertThat(emptied.run()).isEmpty();
        assertThat(filled.run()).isEmpty();

        assertThat(unmet(emptied)).contains(Condition.REST_VOLTAGE);
        assertThat(unmet(filled)).contains(Condition.REST_VOLTAGE);
        assertThat(emptied.events).noneMatch(Event.StepBegun.class::isInstance);
    }

    @Test
    void what_was_picked_up_once_is_not_picked_up_again_after_a_trip() {
        ObedientRig first = brokenOff(3, 2);
        ObedientRig second = goesOn(first, place(first, 1)).reach(RunState.Stepping.class);
        second.twist = scans -> scans.set(Role.LOOP, 0);
        second.until(second::tripped);
        second.twist = scans -> scans;
        IntStream.range(0, 4000).forEach(_ -> second.scan(0.1, Inbox.EMPTY));

        second.ask(Request.CLEAR);
        second.ask(Request.CONTINUE);
        IntStream.range(0, 100).forEach(_ -> second.scan(0.1, Inbox.EMPTY));

        assertThat(second.events).anyMatch(Event.Cleared.class::isInstance);
        assertThat(second.state).isEqualTo(new RunState.Finished(Ended.TRIPPED, 0));
        assertThat(second.events).filteredOn(Event.Continued.class::isInstance).hasSize(1);
    }

    /** A trip while the rig is looked at: nothing was picked up yet, and the same place may be asked for again. */
    @Test
    void a_trip_before_anything_was_picked_up_leaves_the_place_to_be_picked_up() {
        Bracket any = new Bracket(3.2, 3.4);
        PickUp place = new PickUp(7, 3, MINUTE, Account.EMPTY, -1, 0, List.of(0.0), 0, 21, List.of(any), Swing.NONE);
        RunMachine machine = new RunMachine(CELL, NIGHT, Optional.of(place));
        Verdict cleared = new Verdict.Stopped(List.of());

        assertThat(machine.next(new RunState.Interrupted(0, 1), cleared, new Seen(CELL).scan(), Inbox.EMPTY).state()).isEqualTo(RunState.IDLE);
        assertThat(machine.next(new RunState.Interrupted(1, 1), cleared, new Seen(CELL).scan(), Inbox.EMPTY).state())
                .isEqualTo(new RunState.Finished(Ended.TRIPPED, 0));
    }

    @Test
    void a_run_that_goes_on_replays_to_the_same_orders_and_can_be_broken_off_again() {
        ObedientRig first = brokenOff(3, 1);
        ObedientRig second = goesOn(first, place(first, 10)).reach(RunState.Stepping.class);
        long since = second.nanos;
        second.until(() -> second.nanos - since >= 3600e9);
        PickUp again = place(second, 10);

        ObedientRig third = goesOn(second, again);
        third.run();

        assertThat(again.before().ampHours()).as("over both parts").isCloseTo(-42, within(0.3));
        assertThat(again.spentNanos() / 3600e9).isCloseTo(2, within(0.02));
        assertThat(first.differs || second.differs || third.differs).isFalse();
        assertThat(third.ends().getFirst()).isEqualTo(Ended.CUT_OFF);
    }

    @Test
    void a_run_that_is_read_again_knows_its_step_and_whether_its_trip_was_cleared() {
        ObedientRig rig = brokenOff(3, 0.1);
        Retrace read = rig.retrace.orElseThrow();
        assertThat(read.step()).contains(DISCHARGE);
        assertThat(read.recovers()).isFalse();
        assertThat(read.tripStands() || read.cleared()).isFalse();
        Swing swing = read.place().orElseThrow().swing();
        assertThat(swing.filled().orElseThrow() - swing.ampSeconds()).as("what the warden counted since the cell was full, A·s")
                .isCloseTo(0.1 * 21 * 3600, within(150.0));

        rig.twist = scans -> scans.set(Role.LOOP, 0);
        rig.until(rig::tripped);
        assertThat(read.tripStands()).isTrue();
        assertThat(read.cleared()).isFalse();
        assertThat(read.place().orElseThrow().brokenAmps()).isEqualTo(21);

        rig.twist = scans -> scans;
        IntStream.range(0, 4000).forEach(_ -> rig.scan(0.1, Inbox.EMPTY));
        rig.ask(Request.CLEAR);
        IntStream.range(0, 10).forEach(_ -> rig.scan(0.1, Inbox.EMPTY));
        assertThat(read.tripStands()).isFalse();
        assertThat(read.cleared()).isTrue();
    }

    @Test
    void a_run_that_is_read_again_knows_that_low_cells_are_still_to_be_recovered() {
        Program later = new Program("low cells", false, List.of(REST, new Step.Recover(0, 2.1, 2.8)));
        ObedientRig rig = new ObedientRig(CELL, later, Optional.empty(), true, ObedientRig.filled(CELL, 0.5));
        assertThat(rig.retrace.orElseThrow().recovers()).as("in no step").isFalse();

        rig.ask(RunMachine.start(later));
        rig.reach(RunState.Resting.class);

        assertThat(rig.retrace.orElseThrow().recovers()).isTrue();
        assertThat(rig.retrace.orElseThrow().step()).contains(REST);
    }
}
