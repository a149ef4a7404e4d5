package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Protection;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What is remembered from scan to scan: charge, resistance, looks back, and the two sides of the contactor. */
class PastTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());
    private static final long SECOND = Moment.SECOND;
    private static final int SOURCE = 0;
    private static final int SINK = 1;

    private static Reading[] readings(Moment moment) {
        return moment.scan().readings().toArray(Reading[]::new);
    }

    private static Scan at(Moment moment, long nanos) {
        return new Scan(1, nanos, moment.scan().readings());
    }

    private static Counted count(Counted counted, Moment moment, long nanos) {
        return counted.then(at(moment, nanos), readings(moment), moment.places, moment.inForce);
    }

    private static Moment flows(double amps, double chip, double volts) {
        Moment moment = amps >= 0 ? new Moment(CELL).flowing(SOURCE, amps, SECOND) : new Moment(CELL).flowing(SINK, -amps, SECOND);
        return moment.set(Role.ACCUMULATED, chip).set(Role.CELL_VOLTS, volts);
    }

    @Test
    void charge_is_summed_by_the_middle_of_three_currents_so_that_one_false_reading_adds_nothing() {
        Counted counted = count(Counted.NOTHING, flows(10, 0, 3.3), 0);
        counted = count(counted, flows(10, 10, 3.3), SECOND);
        counted = count(counted, flows(100, 20, 3.3), 2 * SECOND);
        counted = count(counted, flows(10, 30, 3.3), 3 * SECOND);
        assertThat(counted.ampSeconds()).isCloseTo(30, within(1e-9));
        counted = count(counted, flows(-20, 30, 3.3), 4 * SECOND);
        counted = count(counted, flows(-20, 10, 3.3), 5 * SECOND);
        assertThat(counted.ampSeconds()).isCloseTo(30 + 10 - 5, within(1e-9));
        assertThat(counted.through()).isCloseTo(30 + 10 + 15, within(1e-9));
        assertThat(count(counted, flows(5, 0, 3.3).failed(Role.CURRENT), 6 * SECOND)).isSameAs(counted);
    }

    @Test
    void the_two_sums_are_laid_beside_each_other_every_twenty_minutes_where_the_chip_s_agrees() {
        Counted first = count(Counted.NOTHING, flows(10, 0, 3.3), 0);
        assertThat(first.mark()).as("one scan says nothing of a sum").isEmpty();
        Counted wrong = count(first, flows(10, 20.6, 3.3), SECOND);
        assertThat(wrong.mark()).as("the chip stepped by more than twice the current and a half").isEmpty();
        assertThat(count(first, flows(10, 20.4, 3.3), SECOND).mark()).isPresent();
        assertThat(count(first, flows(10, -0.4, 3.3), SECOND).mark()).isPresent();
        assertThat(count(first, flows(10, -0.6, 3.3), SECOND).mark()).isEmpty();
        Counted hundred = count(Counted.NOTHING, flows(10, 100, 3.3), 0);
        for (double explained : new double[] {140.4, 120, 99.6}) {
            assertThat(count(hundred, flows(10, explained, 3.3), 2 * SECOND).mark()).as("20 A·s and 20.5 either way: %s", explained).isPresent();
        }
        for (double beyond : new double[] {140.6, 99.4}) {
            assertThat(count(hundred, flows(10, beyond, 3.3), 2 * SECOND).mark()).as("%s", beyond).isEmpty();
        }
        Counted rests = count(Counted.NOTHING, flows(0, 0, 3.3), 0);
        assertThat(count(rests, flows(0, 0.5, 3.3), SECOND).mark()).as("half an ampere-second to the bit").isPresent();
        assertThat(count(rests, flows(0, Math.nextUp(0.5), 3.3), SECOND).mark()).isEmpty();
        Counted marked = count(first, flows(10, 10, 3.3), SECOND);
        assertThat(marked.mark().orElseThrow()).isEqualTo(new Counted.Mark(SECOND, 10, 10, 10, 10));
        Counted sooner = count(marked, flows(10, 12_000, 3.3), 1201 * SECOND - 1);
        assertThat(sooner.mark()).isEqualTo(marked.mark());
        Counted due = count(marked, flows(10, 12_010, 3.3), 1201 * SECOND);
        assertThat(due.mark().orElseThrow().nanos()).isEqualTo(1201 * SECOND);
        assertThat(count(marked, flows(10, 10, 3.3).failed(Role.ACCUMULATED), 2 * SECOND).chip()).isEqualTo(10);
    }

    /** Full at 3.55 V, empty at 3.0 V, in three scans on end. */
    @Test
    void a_discharge_from_full_to_empty_says_what_the_cells_gave() {
        Counted counted = Counted.NOTHING;
        for (int i = 0; i < 2; i++) {
            counted = count(counted, flows(10, 0, 3.55), i * SECOND);
        }
        assertThat(counted.filled()).as("two scans").isEmpty();
        counted = count(counted, flows(12, 0, 3.55), 2 * SECOND);
        counted = count(counted, flows(12, 0, 3.55), 3 * SECOND);
        assertThat(counted.filled().orElseThrow()).isCloseTo(counted.ampSeconds(), within(1e-9));
        assertThat(counted.filledAmps()).isEqualTo(12);
        double full = counted.ampSeconds();
        for (int i = 4; i < 9; i++) {
            counted = count(counted, flows(-20, 0, 3.0), i * SECOND);
        }
        assertThat(counted.taken().orElseThrow()).isCloseTo(full - counted.ampSeconds(), within(1e-9));
        assertThat(counted.emptied().orElseThrow()).isCloseTo(counted.ampSeconds(), within(1e-9));
    }

    private static Counted five(Moment moment) {
        Counted counted = Counted.NOTHING;
        for (int i = 0; i < 5; i++) {
            counted = count(counted, moment, i * SECOND);
        }
        return counted;
    }

    @Test
    void full_and_empty_are_told_at_their_voltages_under_their_own_current_alone() {
        assertThat(five(flows(10, 0, 3.55)).filled()).isPresent();
        assertThat(five(flows(10, 0, Math.nextDown(3.55))).filled()).isEmpty();
        assertThat(five(flows(-10, 0, 3.55)).filled()).isEmpty();
        assertThat(five(flows(-10, 0, 3.0)).emptied()).isPresent();
        assertThat(five(flows(-10, 0, Math.nextUp(3.0))).emptied()).isEmpty();
        assertThat(five(flows(10, 0, 3.0)).emptied()).isEmpty();
        assertThat(five(flows(10, 0, 3.6).at(Closing.CONTACT, SOURCE, SECOND, SECOND)).filled()).isEmpty();
        assertThat(five(flows(-10, 0, 2.9).off(SECOND)).emptied()).isEmpty();
        assertThat(five(flows(-10, 0, 2.9).failed(Role.CELL_VOLTS)).emptied()).as("unseen").isEmpty();
        assertThat(five(flows(10, 0, 3.6).failed(Role.CELL_VOLTS)).filled()).as("unseen").isEmpty();
    }

    private static Counted given(double taken, double put, double amps) {
        return new Counted(0, amps, amps, amps, 0, put, 0, Optional.empty(), 0, Optional.of(0.0), 20, Optional.of(0.0), Optional.of(taken));
    }

    private static Breach putIn(double taken, double put, double amps) {
        return new Moment(CELL).flowing(SOURCE, 20, 100 * SECOND).counted(given(taken, put, amps)).look(9);
    }

    /** A fifth of 105 Ah is the least that measured something; half the current of the last charge is like it. */
    @Test
    void a_charge_puts_in_a_twentieth_more_than_was_taken_and_no_more() {
        double fifth = 0.2 * 105 * 3600;
        assertThat(putIn(300_000, 1.05 * 300_000, 20).found()).isFalse();
        assertThat(putIn(300_000, Math.nextUp(1.05 * 300_000), 20).found()).isTrue();
        assertThat(putIn(300_000, 400_000, 20)).as("the sum is named")
                .isEqualTo(new Breach(CELL.channel(Role.ACCUMULATED).index(), 400_000, 1.05 * 300_000));
        assertThat(putIn(fifth, 400_000, 20).found()).isTrue();
        assertThat(putIn(fifth - 1, 400_000, 20).found()).isFalse();
        assertThat(putIn(300_000, 400_000, 10).found()).isTrue();
        assertThat(putIn(300_000, 400_000, 9.99).found()).isFalse();
        assertThat(new Moment(CELL).flowing(SINK, 20, SECOND).counted(given(300_000, 400_000, 20)).look(9).found()).isFalse();
    }

    /** Marked at zero ten minutes and more ago. */
    private static Breach apart(double ratio, double own, double chip, double through, long nanos, double ampsNow) {
        return apart(CELL, ratio, own, chip, through, nanos, ampsNow);
    }

    private static Breach apart(Rig rig, double ratio, double own, double chip, double through, long nanos, double ampsNow) {
        Counted.Mark mark = new Counted.Mark(Moment.NOW - nanos, 10, 1000, 500, 300);
        Counted counted = new Counted(0, ampsNow, ampsNow, ampsNow, 0, 1000 + own, 500 + through, Optional.of(mark), 0, Optional.empty(),
                0, Optional.empty(), Optional.empty());
        return new Moment(rig).counted(counted).set(Role.ACCUMULATED, 300 + chip).set(Role.CLOCK_RATIO, ratio).look(37);
    }

    /** A calibration lifts each current by 30 mA; the chip has summed without that. */
    @Test
    void a_calibrated_zero_belongs_to_the_chips_sum_too() {
        Doubt doubt = new Doubt(10, 0.01, 0, 0, 0, 0, 5, 50, 0);
        Rig calibrated = CELL.calibrated(List.of(new ChannelCalibration("current_a", 1, 0.03, doubt, LocalDate.EPOCH, LocalDate.EPOCH,
                OptionalDouble.empty(), OptionalLong.empty(), "")));

        assertThat(apart(calibrated, 1.001, 18, 0, 0, 600 * SECOND, 0).found()).isFalse();
        assertThat(apart(CELL, 1.001, 18, 0, 0, 600 * SECOND, 0).found()).isTrue();
    }

    /** 2 % (0.3 % once the clock is known) of what went through, 20 mA for all the time, 0.2 s of both currents. */
    @Test
    void two_sums_differ_by_no_more_than_their_share_a_little_current_and_a_skew() {
        Edge unknown = Edge.between(0, 1000, off -> apart(1, 6000 + off, 6000, 6000, 600 * SECOND, -20));
        assertThat(unknown.outside()).isCloseTo(120 + 12 + 6, within(1e-6));
        Edge known = Edge.between(0, -1000, off -> apart(1.01, 6060 + off, 6000, 6000, 600 * SECOND, -20));
        assertThat(known.outside()).isCloseTo(-(18 + 12 + 6), within(1e-6));
        assertThat(known.breach().limit()).isCloseTo(36, within(1e-6));
        assertThat(known.breach().value()).isCloseTo(-36, within(1e-6));
        assertThat(apart(1, 6138, 6000, 6000, 600 * SECOND, -20).found()).as("to the bit").isFalse();
        assertThat(apart(1, 6138 + 1e-9, 6000, 6000, 600 * SECOND, -20).found()).isTrue();
        assertThat(apart(1, 9000, 6000, 6000, 600 * SECOND - 1, 10).found()).as("before ten minutes").isFalse();
    }

    private static Learnt learn(Learnt learnt, Moment moment, long flowing) {
        Moment at = moment.at(Closing.CURRENT, SINK, flowing, flowing);
        return learnt.then(at.scan(), readings(at), at.places, at.inForce);
    }

    @Test
    void a_path_is_learnt_between_half_a_minute_and_a_minute_and_a_half_of_five_amperes() {
        Moment flows = new Moment(PACK).flowing(SINK, 5, SECOND).set(Role.PACK_VOLTS, 26.4 - 0.01);
        assertThat(learn(Learnt.NOTHING, flows, 30 * SECOND)).isEqualTo(Learnt.NOTHING);
        assertThat(learn(Learnt.NOTHING, flows, 30 * SECOND + 1).looks()).isEqualTo(1);
        assertThat(learn(Learnt.NOTHING, flows, 30 * SECOND + 1).ohms()).isCloseTo(0.02 * 0.002, within(1e-9));
        assertThat(learn(Learnt.NOTHING, flows, 90 * SECOND).looks()).isEqualTo(1);
        assertThat(learn(Learnt.NOTHING, flows, 90 * SECOND + 1)).isEqualTo(Learnt.NOTHING);
        assertThat(learn(Learnt.NOTHING, flows.set(Role.CURRENT, -4.99), 60 * SECOND)).isEqualTo(Learnt.NOTHING);
        Learnt known = new Learnt(0.1, 50, 0.002);
        Moment fuller = new Moment(PACK).flowing(SINK, 5, SECOND).set(Role.PACK_VOLTS, 26.4 + 0.1 - 0.015);
        assertThat(learn(known, fuller, 60 * SECOND).ohms()).as("a fiftieth nearer to 3 mohm").isCloseTo(0.00202, within(1e-9));
        for (Role role : List.of(Role.CURRENT, Role.PACK_VOLTS, Role.CELL_VOLTS)) {
            assertThat(learn(known, new Moment(PACK).flowing(SINK, 20, SECOND).failed(role), 60 * SECOND)).as("%s unseen", role).isSameAs(known);
        }
        Moment closes = new Moment(PACK).at(Closing.CONTACT, SINK, SECOND, SECOND);
        assertThat(known.then(closes.scan(), readings(closes), closes.places, closes.inForce)).isEqualTo(new Learnt(0.1, 0, 0));
        Learnt rested = new Learnt(0.1, 0, 0);
        assertThat(rested.then(closes.scan(), readings(closes), closes.places, closes.inForce)).as("nothing to be forgotten").isSameAs(rested);
    }

    @Test
    void at_rest_the_difference_of_both_sides_is_learnt_and_one_false_scan_moves_it_hardly() {
        Moment rest = new Moment(PACK).set(Role.PACK_VOLTS, 26.42);
        assertThat(Learnt.NOTHING.then(rest.scan(), readings(rest), rest.places, rest.inForce).restVolts()).isCloseTo(0.0004, within(1e-9));
        Moment more = new Moment(PACK).set(Role.PACK_VOLTS, 26.52);
        assertThat(new Learnt(0.1, 0, 0).then(more.scan(), readings(more), more.places, more.inForce).restVolts()).as("a fiftieth nearer")
                .isCloseTo(0.1004, within(1e-9));
        Moment wild = new Moment(PACK).set(Role.PACK_VOLTS, 40);
        assertThat(Learnt.NOTHING.then(wild.scan(), readings(wild), wild.places, wild.inForce).restVolts()).isCloseTo(0.001, within(1e-9));
    }

    private static Past then(Past past, Moment moment, long nanos) {
        return past.then(at(moment, nanos), readings(moment), moment.places, moment.inForce);
    }

    @Test
    void a_look_back_is_half_a_second_to_a_second_old_and_only_at_whole_scans() {
        Past past = Past.blank(new Scan(0, 0, List.of()), Swing.NONE);
        long half = SECOND / 2;
        assertThat(then(past, new Moment(CELL), half - 1).half().nanos()).isZero();
        Past one = then(past, new Moment(CELL), half);
        assertThat(one.half().nanos()).isEqualTo(half);
        Past three = then(then(one, new Moment(CELL), 2 * half), new Moment(CELL), 3 * half);
        assertThat(three.second().nanos()).isEqualTo(2 * half);
        assertThat(three.third().nanos()).isEqualTo(half);
        assertThat(then(one, new Moment(CELL).failed(Role.CELL_VOLTS), 9 * half).half()).isSameAs(one.half());
        assertThat(then(one, new Moment(CELL).failed(Role.CURRENT), 9 * half).half()).isSameAs(one.half());
        Past minute = then(then(then(past, new Moment(CELL), 30 * SECOND), new Moment(CELL), 60 * SECOND), new Moment(CELL), 90 * SECOND);
        assertThat(minute.slow().nanos()).isEqualTo(90 * SECOND);
        assertThat(minute.minute().nanos()).isEqualTo(60 * SECOND);
        assertThat(minute.older().nanos()).isEqualTo(30 * SECOND);
        assertThat(then(past, new Moment(CELL), 30 * SECOND - 1).slow().nanos()).isZero();
        Past slow = then(past, new Moment(CELL), 30 * SECOND);
        assertThat(then(slow, new Moment(CELL), 60 * SECOND - 1).slow()).isSameAs(slow.slow());
    }

    @Test
    void before_the_first_scan_no_channel_moved_and_nothing_was_found() {
        Memory blank = Memory.blank(3, CELL, SECOND, Swing.NONE);

        assertThat(CELL.channels()).allSatisfy(channel -> {
            assertThat(blank.past().earlier(channel, 5)).isEqualTo(5);
            assertThat(blank.past().moved(channel, 5)).isZero();
        });
        assertThat(blank.since()).containsExactly(Memory.NEVER, Memory.NEVER, Memory.NEVER);
        assertThat(blank.found()).containsExactly(Breach.NONE, Breach.NONE, Breach.NONE);
    }

    @Test
    void warmth_is_marked_every_ten_seconds_and_what_rests_every_five_minutes() {
        Moment rest = new Moment(CELL);
        Trail trail = Trail.EMPTY.with(at(rest, 7 * SECOND), rest.places.temperatures);
        RestTrail one = RestTrail.EMPTY.then(at(rest, 7 * SECOND), readings(rest), rest.places);

        assertThat(Trail.EMPTY.due(0)).isTrue();
        assertThat(trail.due(17 * SECOND - 1)).isFalse();
        assertThat(trail.due(17 * SECOND)).isTrue();
        assertThat(one.takenNanos()).containsExactly(7 * SECOND);
        assertThat(one.then(at(rest, 307 * SECOND - 1), readings(rest), rest.places)).isSameAs(one);
        assertThat(one.then(at(rest, 307 * SECOND), readings(rest), rest.places).takenNanos()).containsExactly(7 * SECOND, 307 * SECOND);
    }

    /** One kelvin each ten seconds. */
    @Test
    void over_a_hole_in_the_marks_nothing_warms_nor_cools() {
        assertThat(rise(-1)).as("without one").isCloseTo(6, within(1e-9));
        assertThat(rise(0)).as("at the first mark").isZero();
        assertThat(rise(3)).as("at the last").isZero();
    }

    private static double rise(int hole) {
        Trail trail = Trail.EMPTY;
        for (int mark = 0; mark < 4; mark++) {
            Moment moment = new Moment(CELL).set(Role.BODY, 22 + mark);
            Moment seen = mark == hole ? moment.failed(Role.BODY) : moment;
            trail = trail.with(at(seen, mark * 10L * SECOND), seen.places.temperatures);
        }
        return trail.risePerMinute(CELL.channel(Role.BODY).index(), 3);
    }

    @Test
    void more_than_an_ampere_and_its_uncertainty_flows() {
        Past past = Past.blank(new Scan(0, 0, List.of()), Swing.NONE);
        assertThat(then(past, new Moment(CELL).set(Role.CURRENT, 1), SECOND).flowedNanos()).isZero();
        assertThat(then(past, new Moment(CELL).set(Role.CURRENT, Math.nextUp(1.0)), SECOND).flowedNanos()).isEqualTo(SECOND);
        Moment real = new Moment(TestRigs.oneCell());
        double u = real.places.current.uncertainty(1);
        assertThat(then(past, real.set(Role.CURRENT, 1 + 0.9 * u), SECOND).flowedNanos()).isZero();
        assertThat(then(past, real.set(Role.CURRENT, 1 + 1.1 * u), SECOND).flowedNanos()).isEqualTo(SECOND);
    }

    @Test
    void of_two_looks_back_the_lesser_movement_counts_and_none_where_they_disagree() {
        assertThat(moved(3.2, 3.1)).isCloseTo(0.1, within(1e-9));
        assertThat(moved(3.1, 3.2)).isCloseTo(0.1, within(1e-9));
        assertThat(moved(3.4, 3.5)).isCloseTo(-0.1, within(1e-9));
        assertThat(moved(3.5, 3.35)).isCloseTo(-0.05, within(1e-9));
        assertThat(moved(3.2, 3.4)).isZero();
        assertThat(moved(3.3, 3.1)).isZero();
    }

    /** To 3.3 V, from these a second and a second and a half ago. */
    private static double moved(double second, double third) {
        Scan two = new Moment(CELL).set(Role.CELL_VOLTS, second).scan();
        Scan three = new Moment(CELL).set(Role.CELL_VOLTS, third).scan();
        Past past = new Past(Trail.EMPTY, two, two, three, Learnt.NOTHING, 0, RestTrail.EMPTY, Counted.NOTHING, two, two, three);
        return past.moved(CELL.channel(Role.CELL_VOLTS), 3.3);
    }

    private static boolean match(double pack, double bus) {
        return Sides.match(new Moment(CELL).set(Role.PACK_VOLTS, pack).set(Role.BUS_VOLTS, bus).scan(),
                CELL.channel(Role.PACK_VOLTS), CELL.channel(Role.BUS_VOLTS));
    }

    private static boolean below(double pack, double bus) {
        return Sides.below(new Moment(CELL).set(Role.PACK_VOLTS, pack).set(Role.BUS_VOLTS, bus).scan(),
                CELL.channel(Role.PACK_VOLTS), CELL.channel(Role.BUS_VOLTS));
    }

    @Test
    void bus_and_pack_match_within_a_twentieth_of_a_pack_that_is_one() {
        assertThat(match(20, 21)).isTrue();
        assertThat(match(20, 19)).isTrue();
        assertThat(match(20, Math.nextDown(19.0))).isFalse();
        assertThat(match(1, 1)).isTrue();
        assertThat(match(Math.nextDown(1.0), 1)).isFalse();
        assertThat(below(20, 19)).isFalse();
        assertThat(below(20, Math.nextDown(19.0))).isTrue();
        assertThat(below(1, 0)).isTrue();
        assertThat(below(Math.nextDown(1.0), 0)).isFalse();
    }

    @Test
    void a_cell_meets_the_protection_s_edge_within_tolerance_and_what_it_moved_and_its_uncertainty() {
        Protection protection = new Protection(3.5, 2.5, 0.2, 3, 100, false);
        assertThat(Tied.meets(protection, CELL.channel(Role.CELL_VOLTS), 3.2501, Way.CHARGE)).isTrue();
        assertThat(Tied.meets(protection, CELL.channel(Role.CELL_VOLTS), 3.2499, Way.CHARGE)).isFalse();
        assertThat(Tied.meets(protection, CELL.channel(Role.CELL_VOLTS), 2.7499, Way.DISCHARGE)).isTrue();
        assertThat(Tied.meets(protection, CELL.channel(Role.CELL_VOLTS), 2.7501, Way.DISCHARGE)).isFalse();
        assertThat(Tied.meets(protection, CELL.channel(Role.CELL_VOLTS), 3.25, Way.CHARGE)).as("to the bit").isTrue();
        assertThat(Tied.meets(protection, CELL.channel(Role.CELL_VOLTS), 2.75, Way.DISCHARGE)).as("to the bit").isTrue();
        Rig real = TestRigs.oneCell();
        double u = real.channel(Role.CELL_VOLTS).uncertainty(3.25);
        assertThat(Tied.meets(protection, real.channel(Role.CELL_VOLTS), 3.25 - 0.9 * u, Way.CHARGE)).isTrue();
        assertThat(Tied.tied(CELL.channel(Role.PACK_VOLTS), 20, CELL.channel(Role.BUS_VOLTS), 20.0999)).isTrue();
        assertThat(Tied.tied(CELL.channel(Role.PACK_VOLTS), 20, CELL.channel(Role.BUS_VOLTS), 20.11)).isFalse();
        assertThat(Tied.tied(CELL.channel(Role.PACK_VOLTS), 25, CELL.channel(Role.BUS_VOLTS), 25 - 0.125)).as("to the bit").isTrue();
        assertThat(Tied.tied(CELL.channel(Role.PACK_VOLTS), 25, CELL.channel(Role.BUS_VOLTS), Math.nextDown(25 - 0.125))).isFalse();
    }

    private static Orders on(Closing stage, double amps, double ceiling) {
        return new Orders.Energised(new Lease(1, ceiling, 100, true), Way.CHARGE, 0, stage, new Setpoint(amps, 0));
    }

    @Test
    void orders_are_in_force_since_they_began_and_a_path_since_it_was_closed() {
        InForce closed = InForce.off(5).then(on(Closing.CONTACT, 0, 50), 10, 18);
        assertThat(closed).isEqualTo(new InForce(true, Way.CHARGE, 0, Closing.CONTACT, 10, 10, 0, 0, 5, 50, 18));
        InForce flows = closed.then(on(Closing.CURRENT, 21, 60), 20, 25);
        assertThat(flows).as("a ceiling only falls, the room is that of the closing")
                .isEqualTo(new InForce(true, Way.CHARGE, 0, Closing.CURRENT, 20, 10, 21, 0, 20, 50, 18));
        assertThat(flows.then(on(Closing.CURRENT, 21, 60), 30, 25)).isSameAs(flows);
        InForce less = flows.then(on(Closing.CURRENT, 15, 40), 40, 25);
        assertThat(less).isEqualTo(new InForce(true, Way.CHARGE, 0, Closing.CURRENT, 20, 10, 15, 21, 40, 40, 18));
        InForce lower = less.then(on(Closing.CURRENT, 15, 30), 50, 25);
        assertThat(lower).isEqualTo(new InForce(true, Way.CHARGE, 0, Closing.CURRENT, 20, 10, 15, 21, 40, 30, 18));
        InForce off = lower.then(Orders.OFF, 60, 26);
        assertThat(off).isEqualTo(new InForce(false, Way.CHARGE, 0, Closing.CURRENT, 60, 60, 0, 15, 60, Double.MAX_VALUE, 26));
        assertThat(off.then(Orders.OFF, 70, 27)).isSameAs(off);
    }

    @Test
    void beats_are_withheld_in_the_silence_alone() {
        assertThat(((Orders.Energised) on(Closing.SILENCE, 0, 1)).beats()).isFalse();
        assertThat(((Orders.Energised) on(Closing.CONTACT, 0, 1)).beats()).isTrue();
    }
}
