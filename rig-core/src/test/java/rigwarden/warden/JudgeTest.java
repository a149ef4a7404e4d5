package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** How breaches become trips and notices, whichever rule finds them; when a trip may be cleared; what a scan lets flow. */
class JudgeTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Channel ROOM = CELL.channel(Role.ROOM);
    private static final Channel BODY = CELL.channel(Role.BODY);
    private static final Inbox STOP = new Inbox(true, List.of());
    private static final Inbox CLEAR = Inbox.of(Request.CLEAR);
    private static final long SECOND = Moment.SECOND;

    private Warden warden = new Warden(CELL);
    private Guard guard = warden.fresh(0);
    private long nanos;
    private long number;

    /** A rule that finds what the room reads above 30 degC. */
    private static Rule warm(int number, double holdSeconds, Severity severity) {
        return rule(number, ROOM, holdSeconds, severity);
    }

    private static Rule rule(int number, Channel channel, double holdSeconds, Severity severity) {
        return new Rule(number, "test", "test", Set.of(channel.role()), "30", Math.round(holdSeconds * 1e9), severity, Clearing.QUIET,
                view -> view.valid(channel) && view.value(channel) > 30
                        ? new Breach(channel.index(), view.value(channel), 30) : Breach.NONE);
    }

    private void with(Rule... rules) {
        warden = new Warden(CELL, List.of(rules));
        guard = warden.fresh(0);
    }

    private Verdict scan(Moment moment, Inbox inbox) {
        nanos += CELL.scanNanos();
        Judged judged = warden.judge(guard, new Scan(++number, nanos, moment.scan().readings()), Orders.OFF, inbox);
        guard = judged.guard();
        return judged.verdict();
    }

    private Verdict room(double celsius) {
        return scan(new Moment(CELL).set(Role.ROOM, celsius), Inbox.EMPTY);
    }

    private Verdict unseen(Role role) {
        return scan(new Moment(CELL).failed(role), Inbox.EMPTY);
    }

    @Test
    void a_breach_trips_when_it_was_held_as_long_as_its_rule_says_and_names_its_beginning() {
        with(warm(1, 0.2, Severity.TRIPS));
        assertThat(room(31)).isInstanceOf(Verdict.Healthy.class);
        assertThat(room(32)).isInstanceOf(Verdict.Healthy.class);
        assertThat(room(33)).isInstanceOfSatisfying(Verdict.Unhealthy.class, v -> {
            assertThat(v.first().sinceNanos()).isEqualTo(100_000_000L);
            assertThat(v.first().value()).isEqualTo(33);
            assertThat(v.first().limit()).isEqualTo(30);
            assertThat(v.first().where()).isEqualTo(ROOM);
            assertThat(v.first().scan()).isEqualTo(3);
            assertThat(v.also()).isEmpty();
        });
    }

    @Test
    void a_breach_that_was_over_begins_anew() {
        with(warm(1, 0.2, Severity.TRIPS));
        room(31);
        room(31);
        room(20);
        assertThat(room(31)).isInstanceOf(Verdict.Healthy.class);
        assertThat(room(31)).isInstanceOf(Verdict.Healthy.class);
        assertThat(room(31)).isInstanceOf(Verdict.Unhealthy.class);
    }

    @Test
    void a_breach_is_not_over_because_its_channel_cannot_be_seen_and_another_s_hides_nothing() {
        with(warm(1, 0.2, Severity.TRIPS));
        room(31);
        room(32);
        assertThat(unseen(Role.ROOM)).isInstanceOfSatisfying(Verdict.Unhealthy.class,
                v -> assertThat(v.first().value()).as("what was seen last").isEqualTo(32));

        with(rule(1, BODY, 0.2, Severity.TRIPS));
        scan(new Moment(CELL).set(Role.BODY, 31), Inbox.EMPTY);
        scan(new Moment(CELL).set(Role.BODY, 20).failed(Role.ROOM), Inbox.EMPTY);
        assertThat(guard.memory().since()).as("seen to be over").containsExactly(Memory.NEVER);

        with(warm(1, 0.1, Severity.TRIPS));
        unseen(Role.ROOM);
        assertThat(unseen(Role.ROOM)).as("nothing was ever found").isInstanceOf(Verdict.Healthy.class);
    }

    @Test
    void a_notice_is_told_once_while_it_lasts_and_again_when_it_comes_again() {
        with(warm(1, 0.1, Severity.WARNS));
        assertThat(told(room(31))).isZero();
        assertThat(told(room(31))).isEqualTo(1);
        assertThat(told(room(31))).isZero();
        room(20);
        room(31);
        assertThat(told(room(31))).isEqualTo(1);
        assertThat(guard.memory().breachNanos()).as("it keeps no trip from being cleared").isZero();
        assertThat(((Verdict.Healthy) room(31)).lease().steady()).isTrue();
    }

    private static int told(Verdict verdict) {
        return ((Verdict.Healthy) verdict).warnings().size();
    }

    @Test
    void a_breach_on_its_way_to_a_trip_is_remembered_and_makes_the_scan_unsteady() {
        with(warm(1, 1, Severity.TRIPS));
        assertThat(((Verdict.Healthy) room(20)).lease().steady()).isTrue();
        assertThat(((Verdict.Healthy) room(31)).lease().steady()).isFalse();
        assertThat(guard.memory().breachNanos()).isEqualTo(nanos);
        long then = nanos;
        room(20);
        assertThat(guard.memory().breachNanos()).isEqualTo(then);
    }

    @Test
    void of_several_trips_the_one_that_began_first_is_the_cause_then_the_weightier_then_the_lower() {
        with(warm(1, 0, Severity.TRIPS), warm(2, 0, Severity.TRIPS));
        assertThat(first(room(31))).isEqualTo(1);
        with(warm(1, 0, Severity.TRIPS), warm(2, 0, Severity.TRIPS_UNTIL_PROVED), warm(3, 0, Severity.TRIPS_UNTIL_PROVED));
        Verdict.Unhealthy three = (Verdict.Unhealthy) room(31);
        assertThat(first(three)).isEqualTo(2);
        assertThat(three.also()).extracting(t -> t.rule().number()).containsExactly(1, 3);
        with(warm(1, 0, Severity.TRIPS_UNTIL_PROVED), rule(2, BODY, 0.1, Severity.TRIPS));
        scan(new Moment(CELL).set(Role.BODY, 31), Inbox.EMPTY);
        assertThat(first(scan(new Moment(CELL).set(Role.BODY, 31).set(Role.ROOM, 31), Inbox.EMPTY))).as("older").isEqualTo(2);
        with(rule(1, BODY, 0.1, Severity.TRIPS), warm(2, 0, Severity.TRIPS_UNTIL_PROVED));
        scan(new Moment(CELL).set(Role.BODY, 31), Inbox.EMPTY);
        assertThat(first(scan(new Moment(CELL).set(Role.BODY, 31).set(Role.ROOM, 31), Inbox.EMPTY))).as("older").isEqualTo(1);
    }

    private static int first(Verdict verdict) {
        return ((Verdict.Unhealthy) verdict).first().rule().number();
    }

    @Test
    void what_comes_after_a_trip_hangs_on_it_once_each_and_the_cause_is_kept() {
        with(warm(1, 0, Severity.TRIPS), rule(2, BODY, 0, Severity.TRIPS_UNTIL_PROVED));
        room(31);
        Verdict.Unhealthy again = (Verdict.Unhealthy) room(31);
        assertThat(again.also()).isEmpty();
        for (int i = 0; i < 2; i++) {
            Verdict.Unhealthy both = (Verdict.Unhealthy) scan(new Moment(CELL).set(Role.BODY, 31), Inbox.EMPTY);
            assertThat(first(both)).isEqualTo(1);
            assertThat(both.also()).extracting(t -> t.rule().number()).containsExactly(2);
        }
    }

    @Test
    void a_third_cause_hangs_on_the_first_beside_the_second() {
        Channel shunt = CELL.channel(Role.SHUNT_BODY);
        with(warm(1, 0, Severity.TRIPS), rule(2, BODY, 0, Severity.TRIPS), rule(3, shunt, 0, Severity.TRIPS));
        room(31);
        scan(new Moment(CELL).set(Role.BODY, 31), Inbox.EMPTY);
        for (int i = 0; i < 2; i++) {
            Verdict.Unhealthy all = (Verdict.Unhealthy) scan(new Moment(CELL).set(Role.BODY, 31).set(shunt, 31).set(Role.ROOM, 31), Inbox.EMPTY);
            assertThat(first(all)).isEqualTo(1);
            assertThat(all.also()).extracting(t -> t.rule().number()).containsExactly(2, 3);
        }
    }

    @Test
    void a_judgement_leaves_what_it_was_handed_as_it_was() {
        with(warm(1, 1, Severity.TRIPS), warm(2, 0.1, Severity.WARNS));
        for (double celsius : new double[] {20, 31, 31, 31, 20, 31}) {
            Memory before = guard.memory();
            long[] since = before.since().clone();
            Breach[] found = before.found().clone();
            boolean[] said = before.said().clone();
            room(celsius);
            assertThat(before.since()).isEqualTo(since);
            assertThat(before.found()).isEqualTo(found);
            assertThat(before.said()).isEqualTo(said);
        }
    }

    @Test
    void doubt_grows_by_three_with_a_scan_without_a_reading_and_falls_by_one_to_nothing() {
        with();
        unseen(Role.ROOM);
        int[] once = guard.memory().unsure();
        assertThat(once[ROOM.index()]).isEqualTo(3);
        assertThat(once[BODY.index()]).isZero();
        int[] copy = once.clone();
        unseen(Role.ROOM);
        assertThat(once).as("what was remembered before").isEqualTo(copy);
        assertThat(guard.memory().unsure()[ROOM.index()]).isEqualTo(6);
        for (int i = 0; i < 7; i++) {
            room(22);
        }
        assertThat(Arrays.stream(guard.memory().unsure()).allMatch(doubt -> doubt == 0)).isTrue();
    }

    @Test
    void stop_ends_a_start_and_so_does_a_trip_and_a_notice_beside_stop_is_told() {
        with(warm(1, 0, Severity.WARNS));
        scan(new Moment(CELL), Inbox.of(Request.START));
        assertThat(guard.memory().started()).isEqualTo(Started.USUAL);
        assertThat(scan(new Moment(CELL).set(Role.ROOM, 31), STOP)).isInstanceOfSatisfying(Verdict.Stopped.class,
                stopped -> assertThat(stopped.warnings()).hasSize(1));
        assertThat(guard.memory().started()).isEqualTo(Started.NOT);
        with(warm(1, 0, Severity.TRIPS));
        scan(new Moment(CELL), Inbox.of(Request.START));
        room(31);
        assertThat(guard.memory().started()).isEqualTo(Started.NOT);
        scan(new Moment(CELL), Inbox.of(Request.START));
        assertThat(guard.memory().started()).as("while tripped nothing starts").isEqualTo(Started.NOT);
    }

    /** Rule, limit of its trip, what the scan shows, how long ago the last breach was. */
    private static boolean cleared(int rule, double limit, Moment moment, long quietNanos, Inbox inbox, Trip... also) {
        Warden all = new Warden(CELL);
        Memory memory = moment.memory().startedAs(Started.NOT, Moment.NOW - quietNanos);
        Judged judged = all.judge(new Guard.Tripped(trip(rule, limit), List.of(also), memory), moment.scan(), Orders.OFF, inbox);
        boolean watching = judged.guard() instanceof Guard.Watching;
        assertThat(judged.verdict()).isInstanceOf(watching ? Verdict.Stopped.class : Verdict.Unhealthy.class);
        return watching;
    }

    private static Trip trip(int number, double limit) {
        Rule rule = Rules.of(CELL).stream().filter(r -> r.number() == number).findFirst().orElseThrow();
        return new Trip(rule, number == 51 ? CELL.channel(Role.RECORDER_LAG) : BODY, 0, limit, 0, 1);
    }

    @Test
    void a_trip_is_cleared_by_a_person_with_the_arm_key_once_its_breach_was_gone_for_two_seconds() {
        assertThat(cleared(51, 10, new Moment(CELL), 2 * SECOND, CLEAR)).isTrue();
        assertThat(cleared(51, 10, new Moment(CELL), 2 * SECOND - 1, CLEAR)).isFalse();
        assertThat(cleared(51, 10, new Moment(CELL).set(Role.ARM, 0), 2 * SECOND, CLEAR)).isFalse();
        assertThat(cleared(51, 10, new Moment(CELL), 2 * SECOND, Inbox.EMPTY)).isFalse();
        assertThat(cleared(51, 10, new Moment(CELL), 2 * SECOND, new Inbox(true, List.of(Request.CLEAR)))).isFalse();
        assertThat(cleared(51, 10, new Moment(CELL), 2 * SECOND, CLEAR, trip(21, 45))).as("another is not over").isFalse();
        assertThat(cleared(51, 10, new Moment(CELL), 300 * SECOND, CLEAR, trip(21, 45))).isTrue();
    }

    @Test
    void a_warm_place_has_cooled_by_five_kelvin_and_a_cold_one_warmed_for_five_minutes() {
        long five = 300 * SECOND;
        assertThat(cleared(21, 45, new Moment(CELL).set(Role.BODY, 40), five, CLEAR)).isTrue();
        assertThat(cleared(21, 45, new Moment(CELL).set(Role.BODY, Math.nextUp(40.0)), five, CLEAR)).isFalse();
        assertThat(cleared(21, 45, new Moment(CELL).set(Role.BODY, 30), five - 1, CLEAR)).isFalse();
        assertThat(cleared(21, 45, new Moment(CELL).failed(Role.BODY), five, CLEAR)).as("unseen").isFalse();
        assertThat(cleared(22, 2, new Moment(CELL).set(Role.BODY, 7), five, CLEAR)).isTrue();
        assertThat(cleared(22, 2, new Moment(CELL).set(Role.BODY, Math.nextDown(7.0)), five, CLEAR)).isFalse();
        assertThat(cleared(22, 2, new Moment(CELL).failed(Role.BODY), five, CLEAR)).as("unseen").isFalse();
        assertThat(cleared(26, 15, new Moment(CELL), five, CLEAR)).as("a rise that is over").isTrue();
        assertThat(cleared(26, 15, new Moment(CELL), five - 1, CLEAR)).isFalse();
        assertThat(cleared(45, 0, new Moment(CELL), 1_000_000 * SECOND, CLEAR)).as("a weld by a proof alone").isFalse();
    }

    private double charge(Moment moment) {
        return ((Verdict.Healthy) scan(moment, Inbox.EMPTY)).lease().ceilingAmps(Way.CHARGE);
    }

    @Test
    void what_may_be_charged_follows_from_warmth_and_voltage_to_the_last_bit() {
        with();
        assertThat(charge(new Moment(CELL).set(Role.BODY, 40))).isEqualTo(52.5);
        assertThat(charge(new Moment(CELL).set(Role.BODY, Math.nextUp(40.0)))).isZero();
        assertThat(charge(new Moment(CELL).set(Role.BODY, 15))).isEqualTo(52.5);
        assertThat(charge(new Moment(CELL).set(Role.BODY, Math.nextDown(15.0)))).isEqualTo(21);
        assertThat(charge(new Moment(CELL).failed(Role.BODY))).as("no body seen and no path").isZero();
        assertThat(charge(new Moment(CELL).set(Role.CELL_VOLTS, 2.45))).isEqualTo(52.5);
        assertThat(charge(new Moment(CELL).set(Role.CELL_VOLTS, Math.nextDown(2.45)))).isZero();
        scan(new Moment(CELL), Inbox.of(Request.RECOVER));
        assertThat(charge(new Moment(CELL).set(Role.CELL_VOLTS, 2.2))).isEqualTo(5.25);
    }

    /** A probe that is uncertain by 1.8 K: a cell may be that much colder, or warmer, than it says. */
    @Test
    void what_may_be_charged_holds_for_the_warmth_that_a_cell_may_truly_have() {
        Rig real = TestRigs.oneCell();

        assertThat(charge(real, 15 + 1.9)).isEqualTo(52.5);
        assertThat(charge(real, 15 + 1.7)).isEqualTo(21);
        assertThat(charge(real, 40 - 1.9)).isEqualTo(52.5);
        assertThat(charge(real, 40 - 1.7)).isZero();
    }

    private static double charge(Rig rig, double celsius) {
        Warden all = new Warden(rig, List.of());
        Scan scan = new Moment(rig).set(Role.BODY, celsius).scan();
        Verdict verdict = all.judge(all.fresh(0), scan, Orders.OFF, Inbox.EMPTY).verdict();
        return ((Verdict.Healthy) verdict).lease().ceilingAmps(Way.CHARGE);
    }

    @Test
    void in_a_path_that_no_body_is_seen_of_any_more_its_own_ceiling_goes_on() {
        with();
        Orders orders = new Orders.Energised(new Lease(1, 13, 100, true), Way.CHARGE, 0, Closing.CURRENT, new Setpoint(5, 3.6));
        Judged judged = warden.judge(guard, new Moment(CELL).failed(Role.BODY).scan(), orders, Inbox.EMPTY);

        assertThat(((Verdict.Healthy) judged.verdict()).lease().ceilingAmps(Way.CHARGE)).isEqualTo(13);
    }

    private static Guard granted(Moment moment, Lease lease, Wish wish) {
        Memory memory = moment.memory().startedAs(Started.USUAL, 0);
        return new Warden(CELL).grant(new Guard.Watching(memory), new Verdict.Healthy(lease, List.of()), moment.scan(), wish).guard();
    }

    private static boolean grants(Moment moment, Closing stage, double amps, double volts) {
        return granted(moment, new Lease(7, 21, 21, true), new Wish.Path(Way.CHARGE, 0, stage, new Setpoint(amps, volts)))
                instanceof Guard.Watching;
    }

    @Test
    void a_wish_is_granted_up_to_its_ceilings_and_their_rounding() {
        Moment flows = new Moment(CELL).flowing(0, 5, SECOND);
        assertThat(grants(flows, Closing.CURRENT, 21, 3.65)).isTrue();
        assertThat(grants(flows, Closing.CURRENT, 21 * (1 + 1e-9), 3.65 * (1 + 1e-9))).isTrue();
        assertThat(grants(flows, Closing.CURRENT, 21.001, 3.65)).isFalse();
        assertThat(grants(flows, Closing.CURRENT, 21, 3.651)).isFalse();
    }

    @Test
    void a_path_begins_only_where_everything_is_seen_to_be_off() {
        assertThat(grants(new Moment(CELL), Closing.PRECHARGE, 0, 0)).isTrue();
        assertThat(grants(new Moment(CELL).set(Role.FEEDBACK, 0.5), Closing.PRECHARGE, 0, 0)).isTrue();
        assertThat(grants(new Moment(CELL).set(Role.FEEDBACK, Math.nextUp(0.5)), Closing.PRECHARGE, 0, 0)).isFalse();
        assertThat(grants(new Moment(CELL).set(Role.CURRENT, 1), Closing.PRECHARGE, 0, 0)).isTrue();
        assertThat(grants(new Moment(CELL).set(Role.CURRENT, -Math.nextUp(1.0)), Closing.PRECHARGE, 0, 0)).isFalse();
        for (Role role : List.of(Role.FEEDBACK, Role.CURRENT, Role.SOURCE_ON, Role.SINK_ON, Role.PACK_VOLTS, Role.BUS_VOLTS)) {
            assertThat(grants(new Moment(CELL).failed(role), Closing.PRECHARGE, 0, 0)).as("%s unseen", role).isFalse();
        }
        Moment real = new Moment(TestRigs.oneCell());
        double u = real.places.current.uncertainty(1);
        Guard within = new Warden(real.rig).grant(new Guard.Watching(real.memory()), new Verdict.Healthy(new Lease(7, 21, 21, true),
                List.of()), real.set(Role.CURRENT, 1 + 0.9 * u).scan(), new Wish.Path(Way.CHARGE, 0, Closing.PRECHARGE, Setpoint.NONE)).guard();
        assertThat(within).as("a current within its uncertainty of none").isInstanceOf(Guard.Watching.class);
    }

    @Test
    void current_follows_a_contact_that_is_seen_closed() {
        Moment closed = new Moment(CELL).at(Closing.CONTACT, 0, SECOND, SECOND).set(Role.BUS_VOLTS, 3.3);
        assertThat(grants(closed.set(Role.FEEDBACK, Math.nextUp(0.5)), Closing.CURRENT, 5, 3.6)).isTrue();
        assertThat(grants(closed.set(Role.FEEDBACK, 0.5), Closing.CURRENT, 5, 3.6)).isFalse();
        assertThat(grants(closed.failed(Role.FEEDBACK), Closing.CURRENT, 5, 3.6)).isFalse();
    }

    @Test
    void a_lease_is_good_for_its_own_scan_and_once() {
        Wish wish = new Wish.Path(Way.CHARGE, 0, Closing.PRECHARGE, Setpoint.NONE);
        Lease lease = new Lease(7, 21, 21, true);
        assertThat(granted(new Moment(CELL), new Lease(6, 21, 21, true), wish)).isInstanceOf(Guard.Tripped.class);
        assertThat(granted(new Moment(CELL), new Lease(7, 21, 21, false), wish)).as("not steady").isInstanceOf(Guard.Tripped.class);
        assertThat(granted(new Moment(CELL), lease, wish)).isInstanceOf(Guard.Watching.class);
        assertThat(granted(new Moment(CELL), lease, wish)).as("a second time").isInstanceOf(Guard.Tripped.class);
    }
}
