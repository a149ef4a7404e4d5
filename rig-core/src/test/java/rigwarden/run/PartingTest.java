package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.program.Step.Element;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Closing;
import rigwarden.warden.Inbox;
import rigwarden.warden.OrdersForTests;
import rigwarden.warden.Setpoint;
import rigwarden.warden.Verdict;
import rigwarden.warden.Way;
import rigwarden.warden.Wish;

/** One element opened alone: when current flows beyond doubt, and when it is gone; to the ampere and the nanosecond. */
class PartingTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());
    private static final long SECOND = Seen.SECOND;
    private static final long NOW = Seen.NOW;
    private static final Step.ProveStop RELAY = new Step.ProveStop(1, 5, Element.RELAY);
    private static final Step.ProveStop CONTACTOR = new Step.ProveStop(1, 5, Element.CONTACTOR);

    private static Next next(RunState state, double ceilingAmps, Seen seen, Step.ProveStop step) {
        Verdict healthy = new Verdict.Healthy(OrdersForTests.lease(ceilingAmps, ceilingAmps, true), List.of());
        return new RunMachine(seen.rig, new Program("stops", false, List.of(step))).next(state, healthy, seen.scan(), Inbox.EMPTY);
    }

    private static Seen flowing(double amps) {
        Seen seen = new Seen(CELL).cells(3.3).set(Role.CURRENT, amps).set(Role.FEEDBACK, 1);
        seen.amps = 5;
        return seen;
    }

    private static boolean flows(Step.ProveStop step, double amps, double before, double movedCoulombs, double ordered) {
        Seen seen = flowing(amps);
        seen.ampHours = movedCoulombs / 3600;
        seen.amps = ordered;
        return new Steps(CELL, new Sight(CELL)).flows(step, seen.progress(), new Progress.Point(0, before, 0, 0), seen.scan());
    }

    @Test
    void current_flows_with_half_of_the_order_now_and_before_and_two_seconds_of_it_in_sum() {
        Step.ProveStop drains = new Step.ProveStop(1, 8, Element.RELAY);
        Step.ProveStop charges = new Step.ProveStop(0, 8, Element.RELAY);
        assertThat(flows(drains, -4, -4, -8, 8)).isTrue();
        assertThat(flows(drains, -3.999, -4, -8, 8)).as("now").isFalse();
        assertThat(flows(drains, -4, -3.999, -8, 8)).as("before").isFalse();
        assertThat(flows(drains, -4, -4, -7.99, 8)).as("in sum").isFalse();
        assertThat(flows(drains, -4, -4, -8, 0)).as("not ordered").isFalse();
        assertThat(flows(drains, 4, 4, 8, 8)).as("the wrong way").isFalse();
        assertThat(flows(charges, 4, 4, 8, 8)).as("a charge").isTrue();
        assertThat(flows(charges, -4, 4, 8, 8)).isFalse();
    }

    @Test
    void less_than_three_amperes_cannot_be_told_from_none_and_prove_nothing() {
        assertThat(flows(RELAY, -3, -3, -6, 5)).isTrue();
        assertThat(flows(RELAY, -2.999, -3, -6, 5)).isFalse();
    }

    private static Progress after(Seen seen, double amps) {
        Progress p = seen.progress();
        return new Progress(0, p.sinceNanos(), p.account(), new Progress.Point(NOW - SECOND, amps, 0, 0), p.amps(), p.controlNanos(),
                p.ceilingNanos(), p.flowedNanos(), p.window(), p.top(), p.still(), p.pausedAmpHours(), p.idle(), p.carried());
    }

    @Test
    void with_current_beyond_doubt_the_one_element_is_opened_at_the_set_point_that_stands() {
        Seen seen = flowing(-5);
        seen.since = NOW - 10 * SECOND;
        seen.ampHours = -5.0 / 3600;

        Next relay = next(new RunState.Stepping(after(seen, -5)), 50, seen, RELAY);
        Next contactor = next(new RunState.Stepping(after(seen, -5)), 50, seen, CONTACTOR);
        Next doubt = next(new RunState.Stepping(after(seen, 0)), 50, seen, RELAY);

        assertThat(relay.wish()).isEqualTo(new Wish.Path(Way.DISCHARGE, 1, Closing.RELAY_ALONE, new Setpoint(5, 2.40)));
        assertThat(((Wish.Path) contactor.wish()).stage()).isEqualTo(Closing.CONTACTOR_ALONE);
        assertThat(relay.state()).isInstanceOfSatisfying(RunState.Parting.class, s -> {
            assertThat(s.sinceNanos()).isEqualTo(NOW);
            assertThat(s.gone()).isZero();
            assertThat(s.seconds()).isZero();
        });
        assertThat(doubt.state()).isInstanceOf(RunState.Stepping.class);
        assertThat(((Wish.Path) doubt.wish()).stage()).isEqualTo(Closing.CURRENT);
    }

    @Test
    void cells_that_are_too_full_or_too_empty_and_a_device_that_does_not_start_end_it_unproved() {
        ends(young(3.65), new Step.ProveStop(0, 21, Element.RELAY), Optional.of(Ended.CEILING));
        ends(young(Math.nextDown(3.65)), new Step.ProveStop(0, 21, Element.RELAY), Optional.empty());
        ends(young(3.65), new Step.ProveStop(1, 5, Element.RELAY), Optional.empty());
        ends(young(2.50), new Step.ProveStop(1, 5, Element.RELAY), Optional.of(Ended.CUT_OFF));
        ends(young(2.50), new Step.ProveStop(0, 21, Element.RELAY), Optional.empty());
        ends(since(90, 0), new Step.ProveStop(0, 21, Element.RELAY), Optional.empty());
        ends(since(90, 1000), new Step.ProveStop(0, 21, Element.RELAY), Optional.of(Ended.TIME));
        ends(since(60, 1000), new Step.ProveStop(1, 5, Element.RELAY), Optional.of(Ended.TIME));
    }

    private static Seen since(long seconds, long more) {
        Seen seen = new Seen(PACK).cells(3.3);
        seen.since = NOW - seconds * SECOND - more;
        return seen;
    }

    private static Seen young(double volts) {
        Seen seen = new Seen(PACK).cells(volts);
        seen.since = NOW - 10 * SECOND;
        return seen;
    }

    private static void ends(Seen seen, Step.ProveStop step, Optional<Ended> by) {
        assertThat(new Steps(PACK, new Sight(PACK)).ended(step, seen.progress(), seen.scan())).isEqualTo(by);
    }

    private static Next parting(Seen seen, long forNanos, int gone, double seconds, double ceilingAmps, Step.ProveStop step) {
        return next(new RunState.Parting(seen.progress(), NOW - forNanos, gone, seconds), ceilingAmps, seen, step);
    }

    @Test
    void the_relay_must_stop_it_with_the_contactor_still_closed_and_the_contactor_by_being_open() {
        long half = SECOND / 2;

        assertThat(gone(parting(flowing(0.99), half, 0, 0, 50, RELAY))).isEqualTo(1);
        assertThat(gone(parting(flowing(-1), half, 3, 0.2, 50, RELAY))).as("it flows again").isZero();
        assertThat(gone(parting(flowing(0).set(Role.FEEDBACK, 0), half, 3, 0.2, 50, RELAY))).as("the contactor opened too").isZero();
        assertThat(gone(parting(flowing(0), half, 3, 0.2, 50, CONTACTOR))).as("its feedback says closed").isZero();
        assertThat(gone(parting(flowing(0).set(Role.FEEDBACK, 0), half, 3, 0.2, 50, CONTACTOR))).isEqualTo(4);
        assertThat(((Wish.Path) parting(flowing(0), half, 0, 0, 50, RELAY).wish()).stage()).isEqualTo(Closing.RELAY_ALONE);
    }

    private static int gone(Next next) {
        assertThat(next.events()).isEmpty();
        return ((RunState.Parting) next.state()).gone();
    }

    @Test
    void the_time_is_that_to_the_first_scan_without_current_and_five_in_a_row_prove_it() {
        Next first = parting(flowing(0), 300_000_000L, 0, 0, 50, RELAY);
        Next fourth = parting(flowing(0), 600_000_000L, 3, 0.3, 50, RELAY);
        Next fifth = parting(flowing(0), 700_000_000L, 4, 0.3, 50, RELAY);

        assertThat(((RunState.Parting) first.state()).seconds()).isCloseTo(0.3, within(1e-9));
        assertThat(((RunState.Parting) first.state()).sinceNanos()).isEqualTo(NOW - 300_000_000L);
        assertThat(((RunState.Parting) fourth.state()).seconds()).isEqualTo(0.3);
        assertThat(fifth.events()).containsExactly(new Event.StopProved("sink", Element.RELAY, 0.3));
        assertThat(fifth.wish()).isEqualTo(Wish.NOTHING);
        assertThat(fifth.state()).isInstanceOfSatisfying(RunState.Opening.class, s -> {
            assertThat(s.by()).contains(Ended.PROVED);
            assertThat(s.off()).isTrue();
            assertThat(s.sinceNanos()).isEqualTo(NOW);
        });
    }

    /** Open, off and without current: what follows is the programme's next step, or nothing. */
    @Test
    void a_stop_that_was_not_proved_ends_the_programme_and_one_that_was_is_followed_by_the_next() {
        Next unproved = opened(Ended.CEILING);
        Next proved = opened(Ended.PROVED);

        assertThat(unproved.state()).isEqualTo(new RunState.Finished(Ended.CEILING, 0));
        assertThat(unproved.wish()).isEqualTo(Wish.NOTHING);
        assertThat(unproved.events()).satisfiesExactly(
                e -> assertThat(((Event.StepEnded) e).by()).isEqualTo(Ended.CEILING),
                e -> assertThat(e).isEqualTo(new Event.Finished(Ended.CEILING)));
        assertThat(proved.state()).isInstanceOf(RunState.Waiting.class);
        assertThat(proved.events()).hasSize(2).last().isEqualTo(new Event.StepBegun(2, CONTACTOR.kind()));
    }

    private static Next opened(Ended by) {
        Seen seen = new Seen(CELL);
        Verdict healthy = new Verdict.Healthy(OrdersForTests.lease(50, 50, true), List.of());
        return new RunMachine(CELL, new Program("stops", false, List.of(RELAY, CONTACTOR)))
                .next(new RunState.Opening(seen.progress(), Optional.of(by), true, NOW), healthy, seen.scan(), Inbox.EMPTY);
    }

    @Test
    void after_two_seconds_or_above_the_ceiling_everything_is_opened_unproved() {
        assertThat(parting(flowing(-5), 2 * SECOND, 0, 0, 50, RELAY).state()).isInstanceOf(RunState.Parting.class);
        assertThat(parting(flowing(-5), SECOND, 0, 0, 5, RELAY).state()).as("at the ceiling").isInstanceOf(RunState.Parting.class);
        for (Next over : List.of(parting(flowing(-5), 2 * SECOND + 1, 0, 0, 50, RELAY), parting(flowing(-5), SECOND, 0, 0, 4.999, RELAY))) {
            assertThat(over.wish()).isEqualTo(Wish.NOTHING);
            assertThat(over.events()).isEmpty();
            assertThat(over.state()).isInstanceOfSatisfying(RunState.Opening.class, s -> {
                assertThat(s.by()).contains(Ended.TIME);
                assertThat(s.off()).isTrue();
                assertThat(s.sinceNanos()).isEqualTo(NOW);
            });
        }
    }
}
