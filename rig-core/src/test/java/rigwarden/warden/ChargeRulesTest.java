package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What must be remembered for hours: how much the cells gave, and how they stood at rest. */
class ChargeRulesTest {
    private static final Rig RIG = TestRigs.oneCell();
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final long TEN_SECONDS = 10_000_000_000L;
    private static final long MINUTE = 60_000_000_000L;
    /** 105 Ah at 21 A are five hours. */
    private static final double HOURS = 5;

    private Walk walk = new Walk(RIG);

    private static UnaryOperator<Scans> cell(double volts) {
        return s -> s.set(Role.CELL_VOLTS, volts).set(Role.PACK_VOLTS, volts)
                .set(Role.BUS_VOLTS, bus(s) > 1 ? volts : bus(s));
    }

    private static double bus(Scans scans) {
        return ((Reading.Valid) scans.reading(RIG.channel(Role.BUS_VOLTS))).value();
    }

    /** Through a device at 21 A for so many hours, the last scan at this voltage; then off. */
    private void flow(int through, double hours, double lastVolts) {
        walk.healthy(30, Wish.NOTHING);
        for (Closing stage : List.of(Closing.PRECHARGE, Closing.CONTACT)) {
            walk.healthy(1, walk.wish(through, stage, 0));
        }
        Wish wish = walk.wish(through, Closing.CURRENT, 21);
        walk.healthy(10, wish);
        walk.stride = TEN_SECONDS;
        walk.healthy(hours * 3600 - 40, wish);
        walk.healthy(30, wish, cell(lastVolts));
        walk.stride = RIG.scanNanos();
        walk.healthy(1, Wish.NOTHING);
    }

    /** Hours of charge at 21 A until a rule trips. */
    private double hoursUntil(int rule) {
        Wish wish = walk.wish(SOURCE, Closing.CURRENT, 21);
        walk.healthy(30, Wish.NOTHING);
        for (Closing stage : List.of(Closing.PRECHARGE, Closing.CONTACT)) {
            walk.healthy(1, walk.wish(SOURCE, stage, 0));
        }
        walk.healthy(10, wish);
        long began = walk.nanos - TEN_SECONDS;
        walk.stride = TEN_SECONDS;
        for (int i = 0; i < 4000; i++) {
            if (walk.scan(walk.next(), Inbox.EMPTY, wish) instanceof Verdict.Unhealthy unhealthy) {
                assertThat(unhealthy.first().rule().number()).isEqualTo(rule);
                return (walk.nanos - began) / 3600e9;
            }
        }
        throw new AssertionError("rule " + rule + " never tripped");
    }

    /** Safety page, section 2: more than 1.05 times the measured discharge, for ten seconds. */
    @Test
    void a_charge_that_never_shows_full_trips_at_a_twentieth_more_than_the_discharge_gave() {
        walk.scan(walk.next(), Inbox.of(Request.START), Wish.NOTHING);
        flow(SOURCE, 1, 3.58);
        flow(SINK, HOURS, 2.6);

        assertThat(hoursUntil(9)).isCloseTo(1.05 * HOURS, within(0.02));
    }

    /** A run that goes on in the charge must not forget what went in before the cut. */
    @Test
    void a_charge_that_is_broken_off_and_goes_on_trips_at_the_same_sum() {
        walk.scan(walk.next(), Inbox.of(Request.START), Wish.NOTHING);
        flow(SOURCE, 1, 3.58);
        flow(SINK, HOURS, 2.6);
        flow(SOURCE, 2, 3.35);

        walk = new Walk(RIG, new Warden(RIG), walk.guard.memory().swing());
        walk.scan(walk.next(), Inbox.of(Request.START), Wish.NOTHING);

        assertThat(hoursUntil(9)).isCloseTo(1.05 * HOURS - 2, within(0.02));
    }

    @Test
    void a_discharge_that_did_not_begin_full_measured_nothing_that_a_charge_could_be_held_against() {
        walk.scan(walk.next(), Inbox.of(Request.START), Wish.NOTHING);
        flow(SINK, 2, 2.6);

        flow(SOURCE, HOURS, 3.3);

        assertThat(walk.guard).isInstanceOf(Guard.Watching.class);
    }

    @Test
    void a_cell_that_warms_by_itself_at_rest_trips_once_it_has_settled_and_a_warmer_room_alone_does_not() {
        walk.scan(walk.next(), Inbox.of(Request.START), Wish.NOTHING);
        walk.stride = MINUTE;
        walk.healthy(100 * 60, Wish.NOTHING);
        for (int minute = 0; minute < 60; minute++) {
            double warmer = 0.2 * minute;
            assertThat(walk.scan(walk.next().set(Role.ROOM, 22 + warmer).set(Role.BODY, 22 + warmer * 0.9), Inbox.EMPTY,
                    Wish.NOTHING)).isInstanceOf(Verdict.Healthy.class);
        }

        for (int minute = 0; minute < 40; minute++) {
            Scans scans = walk.next().set(Role.ROOM, 33.8).set(Role.BODY, 32.6 + 0.1 * minute);
            if (walk.scan(scans, Inbox.EMPTY, Wish.NOTHING) instanceof Verdict.Unhealthy unhealthy) {
                assertThat(unhealthy.first().rule().number()).isEqualTo(29);
                assertThat(minute).as("minutes for two kelvin at a tenth a minute, and marks of five").isBetween(20, 31);
                return;
            }
        }
        throw new AssertionError("rule 29 never tripped");
    }

    @Test
    void a_tenth_of_a_percent_between_the_two_sums_is_nobody_s_fault() {
        walk.scan(walk.next(), Inbox.of(Request.START), Wish.NOTHING);
        walk.reach(SOURCE, Closing.CURRENT, 21, 10);
        walk.stride = TEN_SECONDS;

        for (int i = 0; i < 500; i++) {
            double apart = 0.001 * 21 * 10 * i;
            Scans scans = walk.next().set(Role.CLOCK_RATIO, 1.002).apart(apart);
            assertThat(walk.scan(scans, Inbox.EMPTY, walk.wish(SOURCE, Closing.CURRENT, 21)))
                    .isInstanceOf(Verdict.Healthy.class);
        }
    }
}
