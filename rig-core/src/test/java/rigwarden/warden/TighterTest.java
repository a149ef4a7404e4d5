package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rigwarden.rig.Guards;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.rig.Trips;

/** A rig file that moves trips inward: they act there, and nothing that was off becomes energised. */
class TighterTest {
    private static final Rig WIDE = TestRigs.oneCell();
    private static final Trips INNER = new Trips(3.66, 2.45, 42, 6, 50, 0, 55, 30, 15);
    private static final Rig TIGHT = with(INNER);
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final double U = 1.8;

    private static Rig with(Trips trips) {
        Guards g = WIDE.guards();
        return TestRigs.guarded(WIDE, new Guards(g.heartbeatShortest(), g.heartbeatLongest(), g.loopContacts(), g.latching(),
                g.windowHighVolts(), g.windowLowVolts(), g.contactLagSeconds(), trips));
    }

    /** A reading between the inner and the outer limit of a rule. */
    private record Between(int rule, int through, Role role, double value) {}

    @TestFactory
    Stream<DynamicTest> each_trip_that_is_moved_inward_acts_there() {
        double both = Math.hypot(U, U);
        return Stream.of(
                new Between(1, SOURCE, Role.CELL_VOLTS, 3.665),
                new Between(2, SINK, Role.CELL_VOLTS, 2.44),
                new Between(21, SOURCE, Role.BODY, 42.5 - U),
                new Between(22, SOURCE, Role.BODY, 5.5 + U),
                new Between(21, SINK, Role.BODY, 50.5 - U),
                new Between(22, SINK, Role.BODY, -0.5 + U),
                new Between(23, SINK, Role.CONTACTOR_BODY, 55.5 - U),
                new Between(24, SINK, Role.SHUNT_BODY, 22 + 30.5 - both),
                new Between(25, SINK, Role.STUD, 22 + 15.5 - both)).map(row -> DynamicTest.dynamicTest(
                        "rule " + row.rule() + " through " + row.through(), () -> {
                    assertThat(found(row, TIGHT)).as("moved inward").isTrue();
                    assertThat(found(row, WIDE)).as("where it was").isFalse();
                }));
    }

    private static boolean found(Between row, Rig rig) {
        return new Moment(rig).flowing(row.through(), 21, 10_000 * Moment.SECOND).roomAtClosing(22).set(row.role(), row.value())
                .look(row.rule()).found();
    }

    /** Safety page, section 6. Scans that stand anywhere between healthy and far beyond, in both ways and at rest. */
    @Test
    void tighter_limits_never_turn_off_into_energised() {
        Random random = new Random(20);
        List<Role> roles = List.of(Role.CELL_VOLTS, Role.BODY, Role.STUD, Role.SHUNT_BODY, Role.CONTACTOR_BODY, Role.ROOM);
        int tripped = 0;
        int earlier = 0;
        for (int walk = 0; walk < 60; walk++) {
            int through = random.nextInt(2);
            Walk wide = new Walk(WIDE);
            Walk tight = new Walk(TIGHT);
            Wish wish = wide.reach(through, Closing.CURRENT, 21, 1);
            assertThat(tight.reach(through, Closing.CURRENT, 21, 1)).isEqualTo(wish);
            Role role = roles.get(random.nextInt(roles.size()));
            double from = role == Role.CELL_VOLTS ? 3.3 : 22;
            double reach = role == Role.CELL_VOLTS ? 1 : 50;
            double value = from;
            for (int scan = 0; scan < 300; scan++) {
                value += (random.nextDouble() - 0.5) * reach / 10;
                boolean wideOff = off(wide, wish, role, value);
                boolean tightOff = off(tight, wish, role, value);
                assertThat(wideOff && !tightOff).as("off by wide limits and on by tighter ones, %s at %f", role, value).isFalse();
                tripped += wideOff ? 1 : 0;
                earlier += tightOff && !wideOff ? 1 : 0;
            }
        }
        assertThat(tripped).as("scans off by wide limits").isGreaterThan(1000);
        assertThat(earlier).as("scans off by tighter limits alone").isGreaterThan(100);
    }

    private static boolean off(Walk walk, Wish wish, Role role, double value) {
        walk.scan(walk.next().set(role, value), Inbox.EMPTY, wish);
        return walk.inForce instanceof Orders.Off;
    }
}
