package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Joints beside each other and over time, bodies at rest: limits on rises, and who is named. */
class WarmthRulesTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());
    private static final long SECOND = Moment.SECOND;
    private static final int SINK = 1;
    private static final int INVERTER = 2;

    @Test
    void the_warmest_of_several_is_named_and_of_two_alike_the_first_and_one_unseen_hides_none() {
        Moment three = new Moment(PACK).set("cell_02_c", 60).set("cell_05_c", 65).set("cell_07_c", 61);
        assertThat(three.look(21).channel()).isEqualTo(three.column("cell_05_c").index());
        Moment two = new Moment(PACK).set("cell_02_c", 60).set("cell_05_c", 60);
        assertThat(two.look(21).channel()).isEqualTo(two.column("cell_02_c").index());
        assertThat(new Moment(PACK).set(Role.BODY, 60).failed(three.column("cell_01_c"), 0).look(21).channel())
                .isEqualTo(two.column("cell_02_c").index());
        assertThat(new Moment(PACK).set(Role.BODY, -20).failed(three.column("cell_01_c"), 0).look(22).channel())
                .isEqualTo(two.column("cell_02_c").index());
    }

    @Test
    void without_the_room_nothing_is_held_against_it() {
        Moment hot = new Moment(CELL).set(Role.SHUNT_BODY, 59).set(Role.BODY, 50);
        assertThat(hot.look(24).found()).isTrue();
        assertThat(hot.failed(Role.ROOM).look(24)).isEqualTo(Breach.NONE);
    }

    @Test
    void a_terminal_is_held_against_its_own_cell_as_far_as_both_are_seen() {
        Moment hot = new Moment(PACK).set("bar_03_c", 43);
        assertThat(hot.look(25).channel()).isEqualTo(hot.column("bar_03_c").index());
        assertThat(hot.set("cell_03_c", 30).look(25).found()).as("its own cell is warm").isFalse();
        assertThat(hot.set("cell_03_c", 22).set("cell_04_c", 30).look(25).found()).as("another is").isTrue();
        assertThat(hot.failed(hot.column("cell_03_c"), 0).look(25)).isEqualTo(Breach.NONE);
        assertThat(new Moment(PACK).failed(Role.BAR).look(25)).isEqualTo(Breach.NONE);
    }

    /** Readings ten seconds apart, by entry and channel. */
    private static Moment trailed(Rig rig, int through, long pathNanos, int entries, BiFunction<Channel, Integer, Double> reads) {
        Trail trail = Trail.EMPTY;
        Moment moment = new Moment(rig);
        for (int i = 0; i < entries; i++) {
            for (Channel joint : moment.places.joints) {
                moment.set(joint, reads.apply(joint, i));
            }
            trail = trail.with(new Scan(i, Moment.NOW + 10 * SECOND * i, moment.scan().readings()), moment.places.temperatures);
        }
        return new Moment(rig).at(Closing.CURRENT, through, pathNanos, pathNanos).trail(trail);
    }

    /** Bars warm by so many kelvin a minute, each by its own; everything else stays. */
    private static Breach early(IntToDoubleFunction perMinute) {
        return trailed(PACK, INVERTER, 60 * SECOND, 4,
                (c, i) -> 22 + (c.role() == Role.BAR ? perMinute.applyAsDouble(c.cell()) * i / 6 : 0)).look(26);
    }

    private static Breach ofTwo(double perMinute, double other) {
        return trailed(CELL, SINK, 60 * SECOND, 4,
                (c, i) -> 22 + (c.name().equals("terminal_01p_c") ? perMinute : other) * i / 6).look(26);
    }

    @Test
    void a_terminal_alone_warms_by_fifteen_kelvin_a_minute_and_no_more() {
        assertThat(ofTwo(15, 15).found()).isFalse();
        assertThat(ofTwo(15.01, 15).found()).isTrue();
        assertThat(ofTwo(15.01, 15).limit()).isEqualTo(15);
        assertThat(ofTwo(15.01, 15).value()).isCloseTo(15.01, within(1e-9));
        assertThat(ofTwo(9, 0).found()).as("of two none is the odd one").isFalse();
    }

    @Test
    void a_bar_beside_its_likes_warms_three_times_as_fast_and_by_three_kelvin_a_minute_at_least() {
        assertThat(early(cell -> cell == 3 ? 3 : 0).found()).isFalse();
        assertThat(early(cell -> cell == 3 ? 3.01 : 0).found()).isTrue();
        assertThat(early(cell -> cell == 3 ? 6 : 2).found()).as("three times to the bit").isFalse();
        Breach beside = early(cell -> cell == 3 ? 6.01 : 2);
        assertThat(beside.limit()).isCloseTo(6, within(1e-9));
        assertThat(beside.channel()).isEqualTo(PACK.column("bar_03_c").orElseThrow().index());
        assertThat(early(cell -> cell == 3 ? 16 : 2).limit()).as("alone too").isEqualTo(15);
        double[] mixed = {0, 7, 1, 1, 2, 9, 9, 9};
        assertThat(early(cell -> mixed[cell]).limit()).as("three times the third of six").isCloseTo(6, within(1e-9));
    }

    @Test
    void rises_are_judged_under_current_alone() {
        assertThat(early(_ -> 20).found()).isTrue();
        Moment contact = trailed(PACK, INVERTER, 60 * SECOND, 13, (_, i) -> 22.0 + 4 * i);
        assertThat(contact.look(26).found()).isTrue();
        assertThat(contact.at(Closing.CONTACT, INVERTER, SECOND, 60 * SECOND).look(26)).isEqualTo(Breach.NONE);
        assertThat(contact.at(Closing.CURRENT, INVERTER, SECOND, 400 * SECOND).look(27).found()).isTrue();
        assertThat(contact.at(Closing.CONTACT, INVERTER, SECOND, 400 * SECOND).look(27)).isEqualTo(Breach.NONE);
        assertThat(contact.set("bar_03_c", 90).look(28)).isEqualTo(Breach.NONE);
    }

    @Test
    void after_five_minutes_two_kelvin_a_minute_are_borne() {
        assertThat(late(26).found()).isFalse();
        assertThat(late(26.001).found()).isTrue();
        assertThat(late(26.001).limit()).isEqualTo(2);
    }

    /** Two minutes in which a terminal went from 22 degC to this. */
    private static Breach late(double last) {
        return trailed(CELL, SINK, 400 * SECOND, 13, (_, i) -> i < 6 ? 22.0 : last).look(27);
    }

    @Test
    void a_terminal_is_held_against_the_median_of_its_likes() {
        Moment bars = new Moment(PACK).flowing(INVERTER, 75, 100 * SECOND).set("bar_01_c", 20);
        assertThat(bars.set("bar_03_c", 27).look(28).found()).as("five kelvin to the bit").isFalse();
        assertThat(bars.set("bar_03_c", Math.nextUp(27.0)).look(28).found()).isTrue();
        Moment alike = new Moment(PACK).flowing(INVERTER, 75, 100 * SECOND).set("bar_03_c", 30).set("bar_05_c", 30);
        assertThat(alike.look(28).channel()).as("the first of two").isEqualTo(PACK.column("bar_03_c").orElseThrow().index());
        assertThat(bars.failed(bars.column("bar_06_c"), 0).look(28)).as("one unseen").isEqualTo(Breach.NONE);
        Moment stud = new Moment(PACK).flowing(INVERTER, 75, 100 * SECOND).set("terminal_08p_c", 30).set("bar_03_c", 40);
        assertThat(stud.look(28).channel()).as("studs among studs").isEqualTo(PACK.column("terminal_08p_c").orElseThrow().index());
    }

    private static Moment rested(double bodyRise, double roomRise) {
        double[] volts = new double[8];
        double[] first = {22, 22, 22, 22, 22, 22, 22, 22, 22};
        double[] last = {22, 22, 22 + bodyRise, 22, 22, 22, 22, 22, 22 + roomRise};
        double[][] celsius = {first, first, first, first, first, first, last};
        return new Moment(PACK).rest(new RestTrail(new long[7], new double[][] {volts, volts, volts, volts, volts, volts, volts}, celsius));
    }

    @Test
    void a_cell_warms_by_two_kelvin_more_than_the_room_in_half_an_hour_of_rest_and_no_more() {
        assertThat(rested(2, 0).look(29).found()).isFalse();
        Breach breach = rested(2.01, 0).look(29);
        assertThat(breach.channel()).isEqualTo(PACK.column("cell_03_c").orElseThrow().index());
        assertThat(breach.limit()).isEqualTo(2);
        assertThat(rested(3.5, 1.5).look(29).found()).as("with the room").isFalse();
        assertThat(rested(2.01, -3).look(29).found()).as("a room that cools").isTrue();
        assertThat(rested(9, 0).off(5400 * SECOND).look(29).found()).as("after an hour and a half").isTrue();
        assertThat(rested(9, 0).off(5400 * SECOND - 1).look(29).found()).as("before").isFalse();
        assertThat(rested(9, 0).flowing(SINK, 5, 9000 * SECOND).look(29).found()).as("under current").isFalse();
        assertThat(rested(9, 0).rest(RestTrail.EMPTY).look(29).found()).isFalse();
    }

    /** Three times the uncertainty of a difference of two probes of 1.8 K. */
    @Test
    void a_probe_is_said_to_have_fallen_off_only_where_its_cell_is_surely_warm() {
        double certain = 3 * Math.hypot(1.8, 1.8);
        Edge edge = Edge.between(22, 50, body -> cool(TestRigs.oneCell()).set(Role.BODY, body).look(30));
        assertThat(edge.outside()).isCloseTo(22 + certain, within(1e-9));
        assertThat(cool(CELL).set(Role.BODY, 40).look(30).found()).isTrue();
        assertThat(cool(CELL).look(30).found()).as("nothing is warm").isFalse();
        for (String column : List.of("room_c", "cell_01_c")) {
            Moment moment = cool(CELL).set(Role.BODY, 40);
            assertThat(moment.failed(moment.column(column), 0).look(30)).as(column).isEqualTo(Breach.NONE);
        }
        assertThat(cool(CELL).set(Role.BODY, 40).failed(Role.STUD).look(30)).isEqualTo(Breach.NONE);
        assertThat(cool(CELL).set(Role.BODY, 40).at(Closing.CONTACT, SINK, SECOND, SECOND).look(30)).isEqualTo(Breach.NONE);
        assertThat(new Moment(PACK).flowing(INVERTER, 75, 100 * SECOND).set("cell_05_c", 40).set("bar_05_c", 30).set("bar_04_c", 22)
                .look(30).found()).as("the bar is its lower cell's").isFalse();
    }

    /** Terminals a little cooler than the room. */
    private static Moment cool(Rig rig) {
        return new Moment(rig).flowing(SINK, 20, 100 * SECOND).set(Role.ROOM, 22).set(Role.BODY, 22).set(Role.STUD, 21);
    }
}
