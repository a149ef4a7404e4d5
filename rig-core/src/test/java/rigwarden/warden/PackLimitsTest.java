package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Cells;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What cells beside each other tell, each limit to its figure. */
class PackLimitsTest {
    private static final Rig REAL = TestRigs.eightCells();
    private static final Rig PACK = TestRigs.exact(REAL);
    private static final int SINK = 1;
    private static final int INVERTER = 2;
    private static final long LONG = 10_000 * Moment.SECOND;

    private static Channel cell(int number) {
        return PACK.column(String.format("cell_%02d_v", number)).orElseThrow();
    }

    /** Cells 3 and 4 apart from six others. */
    private static Moment tap(double all, double three, double four) {
        return new Moment(PACK).set(Role.CELL_VOLTS, all).set(cell(3), three).set(cell(4), four);
    }

    @Test
    void a_tap_that_is_off_shows_twenty_millivolts_up_and_as_much_down_beside_it() {
        Edge edge = Edge.between(0, 0.1, off -> tap(3.3, 3.3 - off, 3.3 + off).look(5));

        assertThat(edge.outside()).isCloseTo(0.020, within(1e-9));
        assertThat(edge.breach().channel()).as("the lower cell").isEqualTo(cell(3).index());
        assertThat(edge.breach().limit()).isCloseTo(0.020, within(1e-12));
        assertThat(edge.breach().value()).isCloseTo(-0.020, within(1e-9));
        assertThat(tap(3.3, 3.35, 3.25).look(5).found()).as("the other way round").isTrue();
    }

    @Test
    void each_cell_s_uncertainty_widens_it() {
        double u = REAL.column("cell_03_v").orElseThrow().uncertainty(3.3) + REAL.column("cell_04_v").orElseThrow().uncertainty(3.3);
        Edge edge = Edge.between(0, 0.1, off -> new Moment(REAL).set("cell_03_v", 3.3 - off).set("cell_04_v", 3.3 + off).look(5));

        assertThat(edge.outside()).isCloseTo(0.020 + u, within(1e-6));
    }

    /** 31.25 mV: 20 mV and what two cells are uncertain by here; a number that voltages can differ by to the bit. */
    @Test
    void at_its_limit_to_the_bit_no_tap_is_off() {
        double flat = 3.3125;
        double limit = 0.03125;
        double beyond = limit + 1.0 / 1024;

        assertThat(unsure(0.005625, flat - limit, flat + beyond).found()).as("the lower").isFalse();
        assertThat(unsure(0.005625, flat - beyond, flat + limit).found()).as("the upper").isFalse();
        assertThat(unsure(0.005625, flat - beyond, flat + beyond).found()).isTrue();
        assertThat(unsure(0.005625, Math.nextDown(flat - limit), flat + beyond).limit()).isEqualTo(limit);
    }

    private static Breach unsure(double volts, double three, double four) {
        Rig rig = PACK.with(PACK.channels().stream().map(c -> c.role() == Role.CELL_VOLTS
                ? new Channel(c.index(), c.name(), c.role(), c.cell(), c.periodNanos(), c.scale(), c.shift(), 0, volts, c.lowest(), c.highest(),
                        c.lagSeconds()) : c).toList());
        return new Moment(rig).set(Role.CELL_VOLTS, 3.3125).set(cell(3), three).set(cell(4), four).look(5);
    }

    @Test
    void two_neighbours_that_do_not_mirror_each_other_are_no_tap() {
        assertThat(Edge.between(3.35, 3.40, four -> flipped(four)).inside()).as("no longer as much").isCloseTo(3.37, within(1e-9));
        assertThat(tap(3.3, 3.35, 3.36).look(5).found()).as("both up").isFalse();
        assertThat(tap(3.3, 3.25, 3.3 + 0.015).look(5).found()).as("only one beyond").isFalse();
        assertThat(tap(3.3, 3.3 - 0.015, 3.35).look(5).found()).as("only the other").isFalse();
    }

    /** Cell 3 stands 50 mV down: what is said is turned round, so that an edge can be sought. */
    private static Breach flipped(double four) {
        return tap(3.3, 3.25, four).look(5).found() ? Breach.NONE : new Breach(0, four, 0);
    }

    @Test
    void a_tap_is_told_only_on_the_flat_and_where_the_others_are_alike() {
        assertThat(tap(3.25, 3.2, 3.3).look(5).found()).as("3.25 V").isTrue();
        assertThat(tap(3.249, 3.2, 3.3).look(5).found()).as("below").isFalse();
        assertThat(tap(3.38, 3.33, 3.43).look(5).found()).as("3.38 V").isTrue();
        assertThat(tap(3.381, 3.33, 3.43).look(5).found()).as("above").isFalse();
        assertThat(tap(3.3, 3.25, 3.35).set(cell(7), 3.319).look(5).found()).as("19 mV apart").isTrue();
        assertThat(tap(3.3, 3.25, 3.35).set(cell(7), 3.321).look(5).found()).as("21 mV apart").isFalse();
        assertThat(tap(3.3, 3.25, 3.35).set(cell(1), 3.279).look(5).found()).as("21 mV down").isFalse();
        assertThat(tap(3.3, 3.25, 3.35).failed(cell(7), 0).look(5).found()).as("one unseen").isFalse();
    }

    @Test
    void the_last_tap_and_the_first_are_taps_too() {
        Moment first = new Moment(PACK).set(cell(1), 3.25).set(cell(2), 3.35);
        Moment last = new Moment(PACK).set(cell(7), 3.25).set(cell(8), 3.35);

        assertThat(first.look(5).channel()).isEqualTo(cell(1).index());
        assertThat(last.look(5).channel()).isEqualTo(cell(7).index());
    }

    /** At 50 A: 0.1 mohm x 50 A + 5 mV. */
    @Test
    void a_joint_steps_by_a_tenth_of_a_milliohm_and_five_millivolts() {
        Edge down = Edge.between(3.3, 3.2, v -> steady(50, 3.3).set(cell(5), v).look(6));
        Edge up = Edge.between(3.3, 3.4, v -> steady(50, 3.3).set(cell(5), v).look(6));

        assertThat(down.outside()).isCloseTo(3.29, within(1e-9));
        assertThat(up.outside()).isCloseTo(3.31, within(1e-9));
        assertThat(down.breach().limit()).isCloseTo(0.010, within(1e-12));
        assertThat(down.breach().value()).isCloseTo(-0.010, within(1e-9));
        assertThat(down.breach().channel()).isEqualTo(cell(5).index());
    }

    /** At 106.25 A the limit is 15.625 mV, which a voltage can move by to the bit. */
    @Test
    void a_step_of_its_very_limit_is_none_and_hides_no_other() {
        double limit = 0.015625;
        double little = 1.0 / 1024;
        Moment all = steady(106.25, 3.3125);
        all.set(Role.CELL_VOLTS, 3.3125 + little).set(cell(5), 3.3125 - limit);
        assertThat(all.look(6).found()).as("itself it moved by no more").isFalse();
        assertThat(all.set(cell(5), Math.nextDown(3.3125 - limit)).look(6).limit()).isEqualTo(limit);

        Moment two = steady(106.25, 3.3125).set(cell(2), 3.3125 - limit).set(cell(5), 3.3125 - limit - little);
        assertThat(two.look(6).channel()).as("beside its likes").isEqualTo(cell(5).index());
    }

    private static Moment steady(double amps, double volts) {
        return new Moment(PACK).flowing(INVERTER, amps, LONG).set(Role.CELL_VOLTS, volts).before(m -> m);
    }

    @Test
    void a_step_of_all_is_none_of_one_and_one_against_a_step_of_all_is() {
        assertThat(steady(50, 3.3).set(Role.CELL_VOLTS, 3.27).look(6).found()).isFalse();
        Moment against = steady(50, 3.3).set(Role.CELL_VOLTS, 3.27).set(cell(5), 3.3);

        assertThat(against.look(6).channel()).isEqualTo(cell(5).index());
        assertThat(against.look(6).value()).isCloseTo(0.03, within(1e-9));
    }

    @Test
    void a_step_is_judged_at_steady_current_between_three_volts_and_three_and_a_half() {
        assertThat(stepped(5, 5, 3.3).found()).as("5 A").isTrue();
        assertThat(stepped(4.9, 4.9, 3.3).found()).as("less").isFalse();
        assertThat(stepped(50, 49.01, 3.3).found()).as("within 2 %").isTrue();
        assertThat(stepped(50, 50.99, 3.3).found()).as("within 2 %").isTrue();
        assertThat(stepped(50, 49, 3.3).found()).as("2 % to the bit").isTrue();
        assertThat(stepped(50, 48.9, 3.3).found()).as("beyond").isFalse();
        assertThat(stepped(50, 51.1, 3.3).found()).as("beyond").isFalse();
        assertThat(stepped(50, 50, 3.0).found()).as("from 3.0 V").isTrue();
        assertThat(stepped(50, 50, 2.999).found()).as("from below").isFalse();
        assertThat(stepped(50, 50, 3.5).found()).as("from 3.5 V").isTrue();
        assertThat(stepped(50, 50, 3.501).found()).as("from above").isFalse();
    }

    /** One cell 100 mV down within a second, from a voltage. */
    private static Breach stepped(double amps, double before, double volts) {
        return new Moment(PACK).flowing(INVERTER, amps, LONG).set(Role.CELL_VOLTS, volts)
                .before(m -> m.set(Role.CURRENT, -before)).set(cell(5), volts - 0.0625).look(6);
    }

    @Test
    void what_is_not_seen_or_is_not_under_current_or_is_a_tap_is_no_step() {
        assertThat(steady(50, 3.3).set(cell(5), 3.2).look(6).found()).isTrue();
        assertThat(steady(50, 3.3).set(cell(5), 3.2).failed(Role.CURRENT).look(6).found()).isFalse();
        assertThat(steady(50, 3.3).set(cell(5), 3.2).failed(cell(2), 0).look(6).found()).isFalse();
        assertThat(steady(50, 3.3).set(cell(5), 3.2).at(Closing.CONTACT, INVERTER, LONG, LONG).look(6).found()).isFalse();
        assertThat(steady(50, 3.3).set(cell(3), 3.25).set(cell(4), 3.35).look(6).found()).as("a tap has its own rule").isFalse();
    }

    /** Learnt 10 mV and 2 mohm; at 20 A out of the cells: 30 % of 40 mV and 5 mV. */
    @Test
    void a_path_that_drifts_by_a_third_is_a_notice() {
        for (int side : new int[] {1, -1}) {
            Edge edge = Edge.between(26.37, 26.37 + side, v -> drifting(20).set(Role.PACK_VOLTS, v).look(7));
            assertThat(edge.outside()).isCloseTo(26.37 + side * 0.017, within(1e-9));
            assertThat(edge.breach().limit()).isCloseTo(0.017, within(1e-9));
            assertThat(edge.breach().value()).isCloseTo(side * 0.017, within(1e-9));
        }
        assertThat(drifting(5).set(Role.PACK_VOLTS, 27).look(7).found()).as("5 A").isTrue();
        assertThat(drifting(4.9).set(Role.PACK_VOLTS, 27).look(7).found()).as("less").isFalse();
    }

    /** 30 % of 87.5 mV and 5 mV are 31.25 mV. */
    @Test
    void a_drift_of_its_very_limit_is_none() {
        Moment moment = new Moment(PACK).flowing(SINK, 20, LONG).learnt(new Learnt(4.375e-3 * 20, 300, 4.375e-3)).set(Role.CELL_VOLTS, 3.25);

        assertThat(moment.set(Role.PACK_VOLTS, 26.03125).look(7).found()).isFalse();
        assertThat(moment.set(Role.PACK_VOLTS, Math.nextUp(26.03125)).look(7).limit()).isEqualTo(0.03125);
    }

    private static Moment drifting(double amps) {
        return new Moment(PACK).flowing(SINK, amps, LONG).learnt(new Learnt(0.01, 300, 0.002));
    }

    @Test
    void a_drift_is_judged_of_what_was_learnt_and_is_seen() {
        assertThat(drifting(20).set(Role.PACK_VOLTS, 27).learnt(new Learnt(0.01, 299, 0.002)).look(7).found()).isFalse();
        assertThat(drifting(20).set(Role.PACK_VOLTS, 27).at(Closing.CONTACT, SINK, LONG, LONG).look(7).found()).isFalse();
        for (String column : List.of("pack_v", "current_a", "cell_04_v")) {
            Moment moment = drifting(20).set(Role.PACK_VOLTS, 27);
            assertThat(moment.failed(moment.column(column), 0).look(7)).as(column).isEqualTo(Breach.NONE);
        }
    }

    /** Half an hour at rest in which cell 2 fell by so much, the others by a millivolt. */
    private static Moment rested(double volts) {
        double[] first = {3.3, 3.3, 3.3, 3.3, 3.3, 3.3, 3.3, 3.3};
        double[] last = {3.299, 3.3 - volts, 3.299, 3.299, 3.299, 3.299, 3.299, 3.299};
        double[] warmth = new double[9];
        double[][] marks = {first, first, first, first, first, first, last};
        double[][] celsius = {warmth, warmth, warmth, warmth, warmth, warmth, warmth};
        return new Moment(PACK).rest(new RestTrail(new long[7], marks, celsius));
    }

    @Test
    void a_cell_that_falls_three_millivolts_more_than_its_likes_in_half_an_hour_of_rest_is_a_notice() {
        Edge edge = Edge.between(0.001, 0.1, v -> rested(v).look(8));

        assertThat(edge.outside()).isCloseTo(0.004, within(1e-9));
        assertThat(edge.breach().channel()).isEqualTo(cell(2).index());
        assertThat(edge.breach().limit()).isCloseTo(0.004, within(1e-9));
        assertThat(rested(0.1).off(5400 * Moment.SECOND).look(8).found()).as("after an hour and a half").isTrue();
        assertThat(rested(0.1).off(5400 * Moment.SECOND - 1).look(8).found()).as("before").isFalse();
        assertThat(rested(0.1).flowing(SINK, 5, LONG).look(8).found()).as("under current").isFalse();
        assertThat(rested(0.1).rest(RestTrail.EMPTY).look(8).found()).as("half an hour is not there").isFalse();
    }

    @Test
    void a_fall_at_rest_of_its_very_limit_is_no_notice() {
        assertThat(alone(0.003).look(8).found()).isFalse();
        assertThat(alone(Math.nextUp(0.003)).look(8).channel()).isEqualTo(cell(2).index());
    }

    /** Cell 2 fell to nothing from so much, the others not at all. */
    private static Moment alone(double volts) {
        double[] first = {3.3, volts, 3.3, 3.3, 3.3, 3.3, 3.3, 3.3};
        double[] last = {3.3, 0, 3.3, 3.3, 3.3, 3.3, 3.3, 3.3};
        double[] warmth = new double[9];
        double[][] marks = {first, first, first, first, first, first, last};
        double[][] celsius = {warmth, warmth, warmth, warmth, warmth, warmth, warmth};
        return new Moment(PACK).rest(new RestTrail(new long[7], marks, celsius));
    }

    /** Under a discharge cell 3 is so far below the others, which fell by a millivolt in a minute, and it by so much. */
    private static Moment early(double all, double below, double fell) {
        return new Moment(PACK).flowing(SINK, 20, LONG).set(Role.CELL_VOLTS, all).set(cell(3), all - below)
                .before(m -> m.set(Role.CELL_VOLTS, all + 0.001).set(cell(3), all - below + fell));
    }

    @Test
    void a_cell_that_falls_alone_is_a_notice_at_a_hundred_and_fifty_millivolts_below_its_likes() {
        Edge edge = Edge.between(0, 0.3, below -> early(3.25, below, 0.02).look(20));

        assertThat(edge.outside()).isCloseTo(0.150, within(1e-9));
        assertThat(edge.breach().channel()).isEqualTo(cell(3).index());
        assertThat(edge.breach().value()).isCloseTo(3.10, within(1e-9));
        assertThat(edge.breach().limit()).isCloseTo(3.10, within(1e-9));
    }

    @Test
    void it_must_fall_by_five_millivolts_a_minute_more_than_they_do() {
        Edge edge = Edge.between(0.001, 0.1, fell -> early(3.25, 0.2, fell).look(20));

        assertThat(edge.outside()).isCloseTo(0.006, within(1e-9));
        Moment another = early(3.25, 0.2, 0.02)
                .before(m -> m.set(Role.CELL_VOLTS, 3.251).set(cell(3), 3.07).set(cell(5), 3.40));
        assertThat(another.look(20).found()).as("one of the others fell further, from higher up").isTrue();
        assertThat(toNothing(0.005).look(20).found()).as("5 mV to the bit").isFalse();
        assertThat(toNothing(Math.nextUp(0.005)).look(20).found()).isTrue();
    }

    /** Cell 3 fell to nothing from so much in a minute, the others not at all. */
    private static Moment toNothing(double volts) {
        return new Moment(PACK).flowing(SINK, 20, LONG).set(Role.CELL_VOLTS, 3.25).set(cell(3), 0).before(m -> m.set(cell(3), volts));
    }

    @Test
    void nothing_is_said_when_the_others_have_no_more_to_give_or_no_discharge_is_seen() {
        assertThat(early(3.15, 0.2, 0.02).look(20).found()).as("3.15 V").isTrue();
        assertThat(early(3.149, 0.2, 0.02).look(20).found()).as("3.149 V").isFalse();
        assertThat(early(3.25, 0.2, 0.02).at(Closing.CONTACT, SINK, LONG, LONG).look(20).found()).as("no current yet").isFalse();
        assertThat(early(3.25, 0.2, 0.02).at(Closing.CURRENT, 0, LONG, LONG).look(20).found()).as("a charge").isFalse();
        assertThat(early(3.25, 0.2, 0.02).failed(cell(8), 0).look(20).found()).as("a cell not seen").isFalse();
    }

    @Test
    void likes_that_fall_unequally_are_ordered_before_their_middle_is_taken() {
        double[] first = {3.3, 3.3, 3.3, 3.3, 3.3, 3.3, 3.3, 3.3};
        double[] last = {3.299, 3.25, 3.299, 3.299, 3.28, 3.299, 3.299, 3.299};
        double[] warmth = new double[9];
        double[][] marks = {first, first, first, first, first, first, last};
        double[][] celsius = {warmth, warmth, warmth, warmth, warmth, warmth, warmth};
        Moment rested = new Moment(PACK).rest(new RestTrail(new long[7], marks, celsius));

        Breach breach = rested.look(8);

        assertThat(breach.channel()).isEqualTo(cell(2).index());
        assertThat(breach.limit()).as("0.001 V, not the fifth cell's 0.02 V, and 0.003 V").isCloseTo(0.004, within(1e-9));
    }

    @Test
    void fewer_than_three_cells_have_no_likes() {
        assertThat(PackRules.of(TestRigs.oneCell())).isEmpty();
        assertThat(PackRules.of(series(2))).isEmpty();
        assertThat(PackRules.of(series(3))).hasSize(5);
        assertThat(PackRules.of(PACK)).extracting(Rule::number).containsExactly(5, 6, 7, 20, 8);
    }

    private static Rig series(int cells) {
        return new Rig(PACK.name(), PACK.scanNanos(), new Cells(cells, 1, 105, 3.65, 2.5, 0.5, 1.0), PACK.path(), PACK.wires(), PACK.shunt(),
                PACK.inputs(), PACK.probes(), PACK.panel(), PACK.devices(), PACK.busSide(), PACK.guards(), PACK.protection(), PACK.channels(),
                PACK.rehearsed());
    }
}
