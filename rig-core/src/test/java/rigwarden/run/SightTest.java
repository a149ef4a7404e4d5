package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.BiPredicate;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Protection;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Scan;
import rigwarden.warden.Way;

/** What the machine sees in a scan, and what it does not take for seen. */
class SightTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());

    private static boolean sees(BiPredicate<Sight, Scan> what, Seen seen) {
        return what.test(new Sight(seen.rig), seen.scan());
    }

    private static void switchesAt(BiPredicate<Sight, Scan> on, Role role, boolean above) {
        assertThat(sees(on, new Seen(PACK).set(role, 0.5))).isEqualTo(!above);
        assertThat(sees(on, new Seen(PACK).set(role, Math.nextUp(0.5)))).isEqualTo(above);
        assertThat(sees(on, new Seen(PACK).failed(role))).as("unseen").isFalse();
    }

    @Test
    void a_switch_is_on_above_a_half_and_unseen_it_is_neither_on_nor_off() {
        switchesAt(Sight::armed, Role.ARM, true);
        switchesAt(Sight::closed, Role.FEEDBACK, true);
        switchesAt(Sight::open, Role.FEEDBACK, false);
        switchesAt(Sight::letGo, Role.FEEDBACK, false);
        switchesAt(Sight::letGo, Role.COIL_FEED, false);
        switchesAt(Sight::atRest, Role.SINK_ON, false);
    }

    @Test
    void less_than_an_ampere_either_way_is_no_current() {
        assertThat(sees(Sight::noCurrent, new Seen(PACK).set(Role.CURRENT, 1))).isFalse();
        assertThat(sees(Sight::noCurrent, new Seen(PACK).set(Role.CURRENT, Math.nextDown(1.0)))).isTrue();
        assertThat(sees(Sight::noCurrent, new Seen(PACK).set(Role.CURRENT, -1))).isFalse();
        assertThat(sees(Sight::noCurrent, new Seen(PACK).failed(Role.CURRENT))).isFalse();
    }

    @Test
    void at_rest_everything_is_open_off_without_current_and_the_bus_is_below_the_pack() {
        assertThat(sees(Sight::atRest, new Seen(PACK))).isTrue();
        assertThat(sees(Sight::atRest, new Seen(PACK).set(Role.FEEDBACK, 1))).isFalse();
        assertThat(sees(Sight::atRest, new Seen(PACK).set(Role.CURRENT, 2))).isFalse();
        assertThat(sees(Sight::atRest, new Seen(PACK).set(Role.BUS_VOLTS, 26.4))).isFalse();
        assertThat(sees(Sight::atRest, new Seen(CELL).set(Role.SOURCE_ON, 1))).as("the first of two outputs").isFalse();
        assertThat(sees(Sight::atRest, new Seen(CELL).set(Role.SINK_ON, 1))).as("the second").isFalse();
    }

    @Test
    void a_scan_is_whole_with_its_current_and_every_cell() {
        assertThat(sees(Sight::whole, new Seen(PACK))).isTrue();
        assertThat(sees(Sight::whole, new Seen(PACK).failed(Role.CURRENT))).isFalse();
        assertThat(sees(Sight::whole, new Seen(PACK).failed("cell_01_v"))).isFalse();
        assertThat(sees(Sight::whole, new Seen(PACK).failed("cell_08_v"))).isFalse();
    }

    @Test
    void power_is_the_current_times_the_sum_of_the_cells() {
        Progress.Point point = new Sight(PACK).point(new Seen(PACK).set(Role.CURRENT, -20).set("cell_02_v", 3.1).scan());

        assertThat(point.volts()).isCloseTo(7 * 3.3 + 3.1, within(1e-9));
        assertThat(point.watts()).isCloseTo(-20 * (7 * 3.3 + 3.1), within(1e-9));
        assertThat(point.amps()).isEqualTo(-20);
        assertThat(point.nanos()).isEqualTo(Seen.NOW);
    }

    @Test
    void highest_and_lowest_are_of_all_cells() {
        Scan scan = new Seen(PACK).set("cell_02_v", 3.1).set("cell_07_v", 3.5).scan();

        assertThat(new Sight(PACK).highest(scan)).isEqualTo(3.5);
        assertThat(new Sight(PACK).lowest(scan)).isEqualTo(3.1);
        assertThat(new Sight(PACK).volts(scan)).contains(3.1, 3.5).hasSize(8);
    }

    @Test
    void both_sides_are_seen_or_nothing_is_said_of_them() {
        assertThat(sees(Sight::busSeen, new Seen(PACK))).isTrue();
        assertThat(sees(Sight::busSeen, new Seen(PACK).failed(Role.BUS_VOLTS))).isFalse();
        assertThat(sees(Sight::busSeen, new Seen(PACK).failed(Role.PACK_VOLTS))).isFalse();
        assertThat(sees(Sight::lifted, new Seen(PACK).set(Role.BUS_VOLTS, 26.4))).isTrue();
        assertThat(sees(Sight::lifted, new Seen(PACK).set(Role.BUS_VOLTS, 25))).isFalse();
        assertThat(sees(Sight::lifted, new Seen(PACK).failed(Role.PACK_VOLTS))).isFalse();
        assertThat(sees(Sight::tied, new Seen(PACK).set(Role.BUS_VOLTS, 26.3))).isTrue();
        assertThat(sees(Sight::tied, new Seen(PACK).set(Role.BUS_VOLTS, 26.2))).isFalse();
        assertThat(sees(Sight::tied, new Seen(PACK).failed(Role.BUS_VOLTS))).isFalse();
        assertThat(sees(Sight::sidesMatch, new Seen(PACK).set(Role.BUS_VOLTS, 25.2))).isTrue();
        assertThat(sees(Sight::sidesMatch, new Seen(PACK).set(Role.BUS_VOLTS, 25))).isFalse();
    }

    /** A charge is stopped by the highest cell and a discharge by the lowest; 3.65 and 2.45 V, 25 mV and 50 mV of movement. */
    @Test
    void one_cell_of_many_meets_the_protection_s_edge_of_its_own_way() {
        Protection protection = PACK.protection().orElseThrow();
        Seen high = new Seen(PACK).set("cell_04_v", 3.6);
        Seen low = new Seen(PACK).set("cell_04_v", 2.5);

        assertThat(sees((s, scan) -> s.meets(protection, scan, 3.3, Way.CHARGE), high)).isTrue();
        assertThat(sees((s, scan) -> s.meets(protection, scan, 3.3, Way.DISCHARGE), high)).isFalse();
        assertThat(sees((s, scan) -> s.meets(protection, scan, 3.3, Way.DISCHARGE), low)).isTrue();
        assertThat(sees((s, scan) -> s.meets(protection, scan, 3.3, Way.CHARGE), low)).isFalse();
    }

    @Test
    void every_body_is_within_its_limits_or_the_step_waits() {
        assertThat(sees((s, scan) -> s.bodiesWithin(scan, 10, 38), new Seen(PACK).set("cell_02_c", 10).set("cell_03_c", 38))).isTrue();
        assertThat(sees((s, scan) -> s.bodiesWithin(scan, 10, 38), new Seen(PACK).set("cell_08_c", Math.nextDown(10.0)))).isFalse();
        assertThat(sees((s, scan) -> s.bodiesWithin(scan, 10, 38), new Seen(PACK).set("cell_01_c", Math.nextUp(38.0)))).isFalse();
        assertThat(sees((s, scan) -> s.bodiesWithin(scan, 10, 38), new Seen(PACK).failed("cell_04_c"))).isFalse();
        assertThat(new Sight(PACK).firstBodyCelsius(new Seen(PACK).set("cell_01_c", 9).scan())).isEqualTo(9);
        assertThat(new Sight(PACK).firstBodyCelsius(new Seen(PACK).failed("cell_01_c").scan())).isZero();
    }

    /** Two probes of 1.8 K each may differ by 2.55 K without any warmth. */
    @Test
    void a_probe_s_difference_from_the_room_is_taken_off_as_far_as_uncertainty_explains_it() {
        assertThat(zero(room().set(Role.BODY, 24))).isEqualTo(2);
        assertThat(zero(room().set(Role.BODY, 20))).isEqualTo(-2);
        assertThat(zero(room().set(Role.BODY, 25))).as("really warmer").isZero();
        assertThat(zero(room().set(Role.BODY, 22 + Math.hypot(1.8, 1.8)))).isPositive();
        double both = Math.hypot(1.8, 1.8);
        assertThat(zero(room().set(Role.ROOM, 0).set(Role.BODY, both))).as("all that they explain").isEqualTo(both);
        assertThat(zero(room().set(Role.ROOM, 0).set(Role.BODY, Math.nextUp(both)))).isZero();
        assertThat(zero(room().set(Role.BODY, 24).failed(Role.ROOM))).isZero();
        assertThat(zero(room().failed(Role.BODY))).isZero();
    }

    private static Seen room() {
        return new Seen(CELL).set(Role.ROOM, 22);
    }

    private static double zero(Seen seen) {
        return new Sight(seen.rig).zero(seen.scan())[0];
    }

    @Test
    void a_cell_is_settled_within_two_kelvin_of_the_room_its_probe_s_difference_taken_off() {
        assertThat(near(24, 0)).isTrue();
        assertThat(near(Math.nextUp(24.0), 0)).isFalse();
        assertThat(near(20, 0)).isTrue();
        assertThat(near(25, 1)).isTrue();
        assertThat(near(25, -1)).isFalse();
        assertThat(sees((s, scan) -> s.nearRoom(scan, new double[8]), new Seen(PACK).failed(Role.ROOM))).isFalse();
        assertThat(sees((s, scan) -> s.nearRoom(scan, new double[8]), new Seen(PACK).failed("cell_05_c"))).isFalse();
    }

    private static boolean near(double celsius, double zero) {
        return sees((s, scan) -> s.nearRoom(scan, new double[] {zero}), new Seen(CELL).set(Role.ROOM, 22).set(Role.BODY, celsius));
    }
}
