package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Voltages of cells, scan by scan: which cell is named, when low is too low, and what the pack's own voltage must agree with. */
class CellRulesTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final int INVERTER = 2;
    private static final long LONG = 1000 * Moment.SECOND;

    @Test
    void the_highest_of_several_high_cells_is_named_and_of_two_alike_the_first() {
        Moment one = new Moment(PACK).set("cell_03_v", 3.75).set("cell_05_v", 3.80).set("cell_06_v", 3.72);
        Moment two = new Moment(PACK).set("cell_03_v", 3.75).set("cell_05_v", 3.75);

        assertThat(one.look(1).channel()).isEqualTo(one.column("cell_05_v").index());
        assertThat(two.look(1).channel()).isEqualTo(two.column("cell_03_v").index());
    }

    @Test
    void the_lowest_of_several_low_cells_is_named_and_of_two_alike_the_first() {
        Moment one = new Moment(PACK).set("cell_03_v", 2.3).set("cell_05_v", 2.2).set("cell_06_v", 2.35);
        Moment two = new Moment(PACK).set("cell_03_v", 2.3).set("cell_05_v", 2.3);

        assertThat(one.look(2).channel()).isEqualTo(one.column("cell_05_v").index());
        assertThat(two.look(2).channel()).isEqualTo(two.column("cell_03_v").index());
    }

    @Test
    void a_cell_that_cannot_be_seen_hides_no_other() {
        Moment high = new Moment(PACK).set(Role.CELL_VOLTS, 3.75);
        Moment low = new Moment(PACK).set(Role.CELL_VOLTS, 2.3);
        high.failed(high.column("cell_01_v"), 0);
        low.failed(low.column("cell_01_v"), 0);

        assertThat(high.look(1).channel()).isEqualTo(high.column("cell_02_v").index());
        assertThat(low.look(2).channel()).isEqualTo(low.column("cell_02_v").index());
    }

    @Test
    void of_three_scans_the_middle_one_is_judged() {
        assertThat(three(3.3, 3.3, 3.9).look(1).found()).as("one false reading now").isFalse();
        assertThat(three(3.3, 3.9, 3.3).look(1).found()).as("one before").isFalse();
        assertThat(three(3.9, 3.3, 3.3).look(1).found()).as("one before that").isFalse();
        assertThat(three(3.72, 3.9, 3.8).look(1).value()).isEqualTo(3.8);
        assertThat(three(3.9, 3.8, 3.72).look(1).value()).isEqualTo(3.8);
        assertThat(three(3.8, 3.72, 3.9).look(1).value()).isEqualTo(3.8);
    }

    private static Moment three(double earlier, double last, double now) {
        Moment moment = new Moment(CELL);
        moment.earlier = moment.set(Role.CELL_VOLTS, earlier).scan();
        moment.last = moment.set(Role.CELL_VOLTS, last).scan();
        return moment.set(Role.CELL_VOLTS, now);
    }

    /** Safety page, section 2: cell low in discharge and rest of a run; charging; being recovered. */
    @TestFactory
    Stream<DynamicTest> what_is_too_low_depends_on_what_is_done_with_the_cell() {
        record Case(String what, UnaryOperator<Moment> orders, Started started, List<Integer> atTwoTwo, List<Integer> atOneNine) {}
        UnaryOperator<Moment> off = m -> m.off(LONG);
        UnaryOperator<Moment> charge = m -> m.flowing(SOURCE, 5, LONG);
        UnaryOperator<Moment> discharge = m -> m.flowing(SINK, 5, LONG);
        return Stream.of(
                new Case("nobody wants anything of it", off, Started.NOT, List.of(), List.of()),
                new Case("rest of a run", off, Started.USUAL, List.of(2), List.of(2)),
                new Case("waits to be recovered", off, Started.RECOVERING, List.of(), List.of(3)),
                new Case("charge", charge, Started.USUAL, List.of(), List.of(3)),
                new Case("recovery", charge, Started.RECOVERING, List.of(), List.of(3)),
                new Case("charge after a stop", charge, Started.NOT, List.of(), List.of(3)),
                new Case("discharge", discharge, Started.USUAL, List.of(2), List.of(2)),
                new Case("discharge after a stop", discharge, Started.NOT, List.of(2), List.of(2)),
                new Case("discharge under the wrong start", discharge, Started.RECOVERING, List.of(2), List.of(2)))
                .map(c -> DynamicTest.dynamicTest(c.what(), () -> {
                    assertThat(lowRules(c.orders(), c.started(), 2.2)).as("2.2 V").isEqualTo(c.atTwoTwo());
                    assertThat(lowRules(c.orders(), c.started(), 1.9)).as("1.9 V").isEqualTo(c.atOneNine());
                }));
    }

    private static List<Integer> lowRules(UnaryOperator<Moment> orders, Started started, double volts) {
        Moment moment = orders.apply(new Moment(CELL)).set(Role.CELL_VOLTS, volts);
        moment.started = started;
        return Stream.of(2, 3).filter(rule -> moment.look(rule).found()).toList();
    }

    @Test
    void before_its_path_is_learnt_a_pack_may_differ_from_its_cells_by_a_milliohm_each() {
        assertSumTurns(PACK, m -> m.flowing(SINK, 20, LONG), 26.4, 8 * 1e-3 * 20);
        assertSumTurns(PACK, m -> m.flowing(SINK, 20, LONG).learnt(new Learnt(0.5, 299, 0.5)), 26.4, 8 * 1e-3 * 20);
    }

    @Test
    void once_learnt_it_may_differ_by_a_third_of_what_was_learnt_and_a_fifth_of_a_milliohm() {
        Learnt learnt = new Learnt(0.01, 300, 0.002);

        assertSumTurns(PACK, m -> m.flowing(SINK, 20, LONG).learnt(learnt), 26.4 + 0.01 - 0.04, (0.3 * 0.002 + 0.0002) * 20);
        assertSumTurns(PACK, m -> m.flowing(SINK, 20, LONG).learnt(new Learnt(0, 300, -0.002)), 26.4 + 0.04, (0.3 * 0.002 + 0.0002) * 20);
    }

    @Test
    void without_current_a_pack_differs_from_its_cells_by_no_more_than_all_their_uncertainties() {
        Rig rig = TestRigs.eightCells();
        double u = rig.channel(Role.PACK_VOLTS).uncertainty(26.4)
                + rig.channels(Role.CELL_VOLTS).stream().mapToDouble(c -> c.uncertainty(3.3)).sum();

        assertSumTurns(rig, m -> m.set(Role.CURRENT, 0), 26.4, u);
    }

    private static void assertSumTurns(Rig rig, UnaryOperator<Moment> as, double sum, double limit) {
        for (int side : new int[] {1, -1}) {
            Edge edge = Edge.between(sum, sum + side, v -> as.apply(new Moment(rig)).set(Role.PACK_VOLTS, v).look(4));
            assertThat(edge.outside()).isCloseTo(sum + side * limit, within(1e-3 * limit));
            assertThat(edge.breach().limit()).isCloseTo(limit, within(1e-3 * limit));
            assertThat(edge.breach().value()).isCloseTo(side * limit, within(1e-3 * limit));
        }
    }

    @Test
    void what_cannot_be_seen_is_not_summed_up() {
        for (String column : List.of("pack_v", "current_a", "cell_04_v")) {
            Moment moment = new Moment(PACK).set(Role.PACK_VOLTS, 27);
            assertThat(moment.look(4).found()).isTrue();
            assertThat(moment.failed(moment.column(column), 0).look(4)).as(column).isEqualTo(Breach.NONE);
        }
    }

    /** In charge a cell that falls, in discharge one that rises. */
    @Test
    void at_steady_current_a_cell_moves_ten_millivolts_against_it_and_no_more() {
        Edge falls = Edge.between(3.32, 3.2, v -> steady(SOURCE, 20, 3.32, v).look(10));
        Edge rises = Edge.between(3.28, 3.4, v -> steady(SINK, 20, 3.28, v).look(10));

        assertThat(falls.outside()).isCloseTo(3.31, within(1e-9));
        assertThat(rises.outside()).isCloseTo(3.29, within(1e-9));
        assertThat(falls.breach().limit()).as("what it read then").isCloseTo(3.32, within(1e-9));
        assertThat(falls.breach().value()).isEqualTo(falls.outside());
        assertThat(steady(SOURCE, 20, 3.32, 3.4).look(10).found()).as("with the current").isFalse();
    }

    /** Near nothing, where a difference can be ten millivolts to the bit. */
    @Test
    void ten_millivolts_to_the_bit_are_not_more_than_ten() {
        assertThat(steady(SOURCE, 20, 0.010, 0).look(10).found()).isFalse();
        assertThat(steady(SOURCE, 20, Math.nextUp(0.010), 0).look(10).found()).isTrue();
    }

    private static Moment steady(int through, double amps, double before, double now) {
        return new Moment(CELL).flowing(through, amps, LONG).before(m -> m.set(Role.CELL_VOLTS, before)).set(Role.CELL_VOLTS, now);
    }

    @Test
    void a_cell_is_held_against_its_current_only_while_that_is_steady_and_worth_it() {
        assertThat(steady(SOURCE, 5, 3.32, 3.3).look(10).found()).as("5 A").isTrue();
        assertThat(steady(SOURCE, 4.99, 3.32, 3.3).look(10).found()).as("less").isFalse();
        for (double before : new double[] {20.5, 19.5, 0}) {
            assertThat(wasThen(before).look(10).found()).as("%s A a minute ago", before).isFalse();
        }
        assertThat(wasThen(20.39).look(10).found()).as("within 2 %").isTrue();
        assertThat(wasThen(19.61).look(10).found()).as("within 2 %").isTrue();
        Moment exactly = new Moment(CELL).flowing(SOURCE, 100, LONG).before(m -> m.set(Role.CELL_VOLTS, 3.32).set(Role.CURRENT, 98));
        assertThat(exactly.look(10).found()).as("2 % to the bit").isTrue();
    }

    private static Moment wasThen(double amps) {
        return new Moment(CELL).flowing(SOURCE, 20, LONG).before(m -> m.set(Role.CELL_VOLTS, 3.32).set(Role.CURRENT, amps));
    }

    @Test
    void a_cell_has_five_minutes_to_follow_its_current() {
        long five = 300 * Moment.SECOND;

        assertThat(since(five).look(10).found()).isFalse();
        assertThat(since(five + 1).look(10).found()).isTrue();
        assertThat(since(LONG).at(Closing.CONTACT, SOURCE, LONG, LONG).look(10).found()).as("no current").isFalse();
        assertThat(since(LONG).failed(Role.CURRENT).look(10).found()).as("current unseen").isFalse();
        Moment unseen = new Moment(PACK).flowing(INVERTER, 75, LONG).before(m -> m.set(Role.CELL_VOLTS, 3.28));
        unseen.failed(unseen.column("cell_01_v"), 0);
        assertThat(unseen.look(10).channel()).as("another cell").isEqualTo(unseen.column("cell_02_v").index());
    }

    private static Moment since(long nanos) {
        return new Moment(CELL).flowing(SOURCE, 20, nanos).before(m -> m.set(Role.CELL_VOLTS, 3.32));
    }
}
