package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class WarmthTest {
    private static final double BODY = 2100;
    private static final double STUDS = 80;
    private static final double BETWEEN = 1.6;
    private static final double OUT = 0.6;

    /** Body and both studs (alike, so one node) with 20 W in the body: exact solution of two linear equations. */
    @Test
    void body_and_studs_follow_the_exact_two_node_solution_over_minutes_and_hours() {
        WarmthParameters two = new WarmthParameters(OUT, 0, STUDS / 2, BETWEEN / 2, 0, 30, 0.06, 0.3, 60, 0.5, 150,
                0.8);
        CellParameters cell = CellParameters.plain(100, 3.3, 1e-3);
        World world = new World(WorldParameters.oneCell().withCells(List.of(cell)).withWarmth(two),
                new double[] {0.5});
        world.inflict(new Fault.HeatBody(0, 20));
        for (double seconds : new double[] {10, 30, 60, 300, 1800, 7200, 36_000}) {
            world.advanceTo(Math.round(seconds * Rigs.SECOND));
            double[] exact = twoNodes(20, seconds);
            assertThat(world.celsius(Node.body(0)) - 22).isCloseTo(exact[0], within(1e-5));
            assertThat(world.celsius(Node.stud(0, true)) - 22).isCloseTo(exact[1], within(1e-5));
            assertThat(world.celsius(Node.stud(0, false)) - 22).isCloseTo(exact[1], within(1e-5));
        }
    }

    /** x' = A·x + b from rest, by the eigenvalues of the 2×2 matrix A. */
    private static double[] twoNodes(double watts, double seconds) {
        double a = -(OUT + BETWEEN) / BODY;
        double b = BETWEEN / BODY;
        double c = BETWEEN / STUDS;
        double d = -BETWEEN / STUDS;
        double middle = (a + d) / 2;
        double spread = Math.sqrt((a - d) * (a - d) / 4 + b * c);
        double fast = middle - spread;
        double slow = middle + spread;
        double end = watts / OUT;
        double slope = watts / BODY;
        double ofSlow = (slope + fast * end) / (slow - fast);
        double ofFast = -end - ofSlow;
        double body = end + ofSlow * Math.exp(slow * seconds) + ofFast * Math.exp(fast * seconds);
        double stud = end + ofSlow * (slow - a) / b * Math.exp(slow * seconds)
                + ofFast * (fast - a) / b * Math.exp(fast * seconds);
        return new double[] {body, stud};
    }

    /** Closed form of a first-order lag behind a node that stands still; the room's step reaches a fallen bead. */
    @Test
    void a_bead_follows_with_its_lag_and_a_fallen_one_follows_the_room() {
        WorldParameters p = WorldParameters.oneCell().withWarmth(WarmthParameters.sealed())
                .withCells(List.of(CellParameters.plain(100, 3.3, 1e-3)));
        World world = new World(p, new double[] {0.5});
        world.inflict(new Fault.RoomStep(10));
        world.inflict(new Fault.DetachedBead(1));
        Rigs.advance(world, 5);
        assertThat(world.beadCelsius(0)).isEqualTo(22);
        assertThat(world.beadCelsius(1)).isCloseTo(32 - 10 * Math.exp(-1), within(1e-9));
        assertThat(world.beadCelsius(2)).isEqualTo(22);
        assertThat(world.beadCelsius(3)).isCloseTo(32 - 10 * Math.exp(-5.0 / 30), within(1e-9));
    }

    @Test
    void a_room_drifts_in_a_straight_line() {
        World world = new World(WorldParameters.oneCell().withRoom(new Room(15, 0.8)), new double[] {0.5});
        world.advanceTo(10 * Rigs.HOUR);
        assertThat(world.celsius(Node.ROOM)).isCloseTo(23, within(1e-9));
    }

    /** Steady state by hand: 100 A through the shunt, 0.25 mΩ, 0.5 W/K: 2.5 W, 5.0 K. */
    @Test
    void shunt_and_contactor_reach_their_steady_warmth() {
        World world = Rigs.plain(1000, 3.3, 0.2e-3);
        Rigs.join(world, Line.SINK_RELAY);
        world.sink(0, true, 100);
        Rigs.advance(world, 3600);
        double squared = world.amps() * world.amps();
        assertThat(world.celsius(Node.SHUNT) - 22).isCloseTo(squared * 0.25e-3 / 0.5, within(1e-3));
        assertThat(world.celsius(Node.CONTACTOR) - 22).isCloseTo(squared * 0.3e-3 / 0.8, within(1e-3));
    }

    /**
     * By hand: 10 W more, half in the stud, half in its lug. Against the other side, whose body and room are the same:
     * 5 = 0.8·s + 1.5·(s − l) and 5 + 1.5·(s − l) = 0.36·l give s = 8.284 K and l = 9.369 K.
     */
    @Test
    void a_loose_joint_warms_its_stud_and_lug_above_the_others() {
        World world = new World(WorldParameters.oneCell(), new double[] {0.9});
        Rigs.join(world, Line.SINK_RELAY);
        world.inflict(new Fault.LooseJoint(0, true, 1e-3));
        world.sink(0, true, 100);
        Rigs.advance(world, 1200);
        double stud = world.celsius(Node.stud(0, true)) - world.celsius(Node.stud(0, false));
        double lug = world.celsius(Node.link(1)) - world.celsius(Node.link(0));
        assertThat(stud).isCloseTo(8.284, within(0.01));
        assertThat(lug).isCloseTo(9.369, within(0.01));
    }

    @Test
    void a_driven_body_rises_at_the_asked_rate_when_it_loses_nothing() {
        WarmthParameters shut = new WarmthParameters(0, 0, 40, 0, 0, 30, 0, 0, 60, 0, 150, 0);
        World world = new World(WorldParameters.oneCell().withWarmth(shut)
                .withCells(List.of(CellParameters.plain(100, 3.3, 1e-3))), new double[] {0.5});
        world.inflict(new Fault.HeatRate(0, 3));
        Rigs.advance(world, 600);
        assertThat(world.celsius(Node.body(0))).isCloseTo(52, within(1e-9));
    }
}
