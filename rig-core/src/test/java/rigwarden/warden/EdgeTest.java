package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/**
 * Each limit where the safety page puts it: a step inside nothing trips, a step outside the rule does. A limit that is moved
 * by one step to the lax side is caught. Figures are the page's, not the code's; a step is 2 mV, 0.2 A, 0.2 K, 0.01 s.
 */
class EdgeTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();
    private static final double MV = 0.002;
    private static final double AMP = 0.2;
    private static final double KELVIN = 0.2;

    /** Sets a scan so many steps outside of the limit; negative is inside. Gets the seconds since it began. */
    private interface Edge {
        Scans at(Scans scans, double outside, double seconds);
    }

    /**
     * One limit.
     *
     * @param seconds in which a breach must have tripped
     */
    private record Row(int rule, String what, Rig rig, BiFunction<Walk, Double, Wish> reach, double seconds, Edge edge) {}

    private static Wish off(Walk walk, double seconds) {
        walk.start();
        walk.healthy(seconds, Wish.NOTHING);
        return Wish.NOTHING;
    }

    private static BiFunction<Walk, Double, Wish> flowing(int device, double amps) {
        return (walk, seconds) -> walk.reach(device, Closing.CURRENT, amps, seconds);
    }

    private static double u(Rig rig, Role role, double at) {
        return rig.channel(role).uncertainty(at);
    }

    private static Scans cell(Scans scans, double volts) {
        return scans.set(Role.CELL_VOLTS, volts).set(Role.PACK_VOLTS, volts);
    }

    private static List<Row> rows() {
        BiFunction<Walk, Double, Wish> charge = flowing(0, 21);
        BiFunction<Walk, Double, Wish> closed = (walk, _) -> walk.reach(0, Closing.CONTACT, 0, 0.1);
        BiFunction<Walk, Double, Wish> discharge = flowing(1, 21);
        BiFunction<Walk, Double, Wish> sink = flowing(1, 20);
        BiFunction<Walk, Double, Wish> heat = flowing(2, 75);
        Channel three = PACK.column("cell_03_v").orElseThrow();
        Channel four = PACK.column("cell_04_v").orElseThrow();
        Channel five = PACK.column("cell_05_v").orElseThrow();
        Channel stud = CELL.channels(Role.STUD).getFirst();
        double tied = 0.005 * 3.3 + u(CELL, Role.PACK_VOLTS, 3.3) + u(CELL, Role.BUS_VOLTS, 3.3);
        double sums = u(CELL, Role.PACK_VOLTS, 3.3) + u(CELL, Role.CELL_VOLTS, 3.3);
        double taps = three.uncertainty(3.3) + four.uncertainty(3.3);
        return List.of(
                new Row(1, "3.70 V", CELL, charge, 1, (s, out, _) -> cell(s, 3.70 - u(CELL, Role.CELL_VOLTS, 3.7) + out * MV)),
                new Row(2, "2.40 V", CELL, discharge, 1, (s, out, _) -> cell(s, 2.40 + u(CELL, Role.CELL_VOLTS, 2.4) - out * MV)),
                new Row(3, "2.00 V", CELL, charge, 1, (s, out, _) -> cell(s, 2.00 + u(CELL, Role.CELL_VOLTS, 2.0) - out * MV)),
                new Row(4, "at rest", CELL, EdgeTest::off, 3, (s, out, _) -> s.set(Role.PACK_VOLTS, 3.3 - sums - out * MV)),
                new Row(5, "20 mV", PACK, EdgeTest::off, 2, (s, out, _) -> s.set(three, 3.3 - 0.020 - taps - out * MV)
                        .set(four, 3.3 + 0.020 + taps + out * MV)),
                new Row(6, "0.1 mohm and 5 mV", PACK, heat, 0.5, (s, out, _) -> s.set(five, 3.3 - 0.0125 - out * MV)
                        .set(Role.PACK_VOLTS, 26.4 - 0.0125 - out * MV)),
                new Row(11, "110 %", CELL, charge, 4, (s, out, _) -> s.set(Role.CURRENT, 23.1 + 1 + u(CELL, Role.CURRENT, 24) + out * AMP)),
                new Row(12, "150 %", CELL, charge, 1, (s, out, _) -> s.set(Role.CURRENT, 31.5 + 1 + u(CELL, Role.CURRENT, 33) + out * AMP)),
                new Row(13, "a tenth", CELL, charge, 2, (s, out, _) -> s.set(Role.CURRENT, 2.1 - out * AMP)),
                new Row(14, "1 A", CELL, charge, 1, (s, out, _) -> s.set(Role.CURRENT, -1 - u(CELL, Role.CURRENT, 1) - out * AMP)),
                new Row(15, "1 A", CELL, EdgeTest::off, 1, (s, out, _) -> s.set(Role.CURRENT, 1 + u(CELL, Role.CURRENT, 1) + out * AMP)),
                new Row(16, "half a hundredth", CELL, charge, 0.05, (s, out, _) -> s.set(Role.CURRENT, 0)
                        .set(Role.BUS_VOLTS, 3.3 - tied - out * MV)),
                new Row(17, "8 x 3.65 V", PACK, (walk, _) -> walk.reach(0, Closing.NO_LOAD, 0, 1), 1,
                        (s, out, _) -> s.set(Role.BUS_VOLTS, 29.2 - u(PACK, Role.BUS_VOLTS, 29.2) + out * 0.02)),
                new Row(19, "half the pack", CELL, EdgeTest::off, 1, (s, out, _) -> s.set(Role.BUS_VOLTS, 1.65 + out * 0.01)),
                new Row(21, "45 degC charging", CELL, closed, 2, (s, out, _) -> s.set(Role.BODY, 45 - 1.8 + out * KELVIN)
                        .set(Role.STUD, 40)),
                new Row(21, "55 degC discharging", CELL, discharge, 2, (s, out, _) -> s.set(Role.BODY, 55 - 1.8 + out * KELVIN)
                        .set(Role.STUD, 50)),
                new Row(22, "2 degC charging", CELL, closed, 2, (s, out, _) -> s.set(Role.BODY, 2 + 1.8 - out * KELVIN)
                        .set(Role.STUD, 15)),
                new Row(22, "-10 degC discharging", CELL, discharge, 2, (s, out, _) -> s.set(Role.BODY, -10 + 1.8 - out * KELVIN)
                        .set(Role.STUD, 0)),
                new Row(23, "60 degC", CELL, EdgeTest::off, 2, (s, out, _) -> s.set(Role.CONTACTOR_BODY, 60 - 1.8 + out * KELVIN)
                        .set(Role.ROOM, 45)),
                new Row(24, "35 K over the room", CELL, EdgeTest::off, 2, (s, out, _) -> s.set(Role.SHUNT_BODY, 22 + 35 - Math.hypot(1.8, 1.8) + out * KELVIN)),
                new Row(25, "20 K over its cell", CELL, EdgeTest::off, 2, (s, out, _) -> s.set(stud, 22 + 20 - Math.hypot(1.8, 1.8) + out * KELVIN)),
                new Row(26, "15 K/min", CELL, discharge, 90, (s, out, t) -> s.set(Role.STUD, 22 + (15 + 0.5 * out) * t / 60)
                        .set(Role.BODY, 22 + 0.6 * (15 + 0.5 * out) * t / 60)),
                new Row(27, "2 K/min", CELL, (walk, _) -> walk.reach(1, Closing.CURRENT, 21, 310), 180,
                        (s, out, t) -> s.set(Role.STUD, 22 + (2 + 0.15 * out) * t / 60).set(Role.BODY, 22 + 2 * t / 60)),
                new Row(28, "5 K over its like", CELL, charge, 62, (s, out, _) -> s.set(stud, 22 + 5 + 1.8 + out * KELVIN)),
                new Row(30, "a quarter of the warmth", CELL, discharge, 62, (s, out, _) -> s.set(Role.BODY, 38)
                        .set(Role.STUD, 22 + 4 - out * KELVIN)),
                new Row(38, "5 % and 0.5 A", CELL, charge, 11, (s, out, _) -> s.set(Role.CURRENT, 21 - 0.05 * 21 - 0.5
                        - u(CELL, Role.CURRENT, 19.45) - CELL.column("source_a").orElseThrow().uncertainty(21) - out * AMP)),
                new Row(38, "the other way", CELL, charge, 11, (s, out, _) -> s.set(Role.CURRENT, (21 + 0.5
                        + u(CELL, Role.CURRENT, 22.9) + CELL.column("source_a").orElseThrow().uncertainty(21)) / 0.95 + out * AMP)),
                new Row(46, "5 % of the pack", CELL, EdgeTest::off, 1, (s, out, _) -> s.set(Role.BUS_VOLTS, 0.95 * 3.3 + out * 0.01)),
                new Row(51, "10 s", CELL, EdgeTest::off, 0.05, (s, out, _) -> s.set(Role.RECORDER_LAG, 10 + out * 0.01)),
                new Row(53, "64 MB", CELL, EdgeTest::off, 1, (s, out, _) -> s.set(Role.FREE_SPACE, 64e6 - out * 1e5)),
                new Row(54, "three periods", CELL, EdgeTest::off, 0.05, (s, out, _) -> s.set(Role.LATENESS, 0.3 + out * 0.01)),
                new Row(57, "0.1 V and twice 3 mohm", CELL, charge, 0.6, (s, out, _) -> s.set(Role.BUS_VOLTS,
                        3.3 + 0.1 + 2 * 0.003 * 21 + u(CELL, Role.PACK_VOLTS, 3.3) + u(CELL, Role.BUS_VOLTS, 3.53) + out * MV)),
                new Row(57, "the other way", CELL, discharge, 0.6, (s, out, _) -> s.set(Role.BUS_VOLTS,
                        3.3 - 0.1 - 2 * 0.003 * 21 - u(CELL, Role.PACK_VOLTS, 3.3) - u(CELL, Role.BUS_VOLTS, 3.13) - out * MV)),
                new Row(13, "1 A of the sink that tells", PACK, sink, 2, (s, out, _) -> s.set(Role.CURRENT, -2 + out * AMP)));
    }

    @TestFactory
    Stream<DynamicTest> a_step_inside_is_healthy_and_a_step_outside_trips() {
        return rows().stream().map(row -> DynamicTest.dynamicTest("rule " + row.rule() + ", " + row.what(), () -> {
            assertThat(named(row, -1)).as("a step inside").doesNotContain(row.rule());
            assertThat(named(row, 1)).as("a step outside").contains(row.rule());
        }));
    }

    /** Rules that have tripped, first or beside others, while the reading stood there. */
    private static Set<Integer> named(Row row, double outside) {
        Walk walk = new Walk(row.rig());
        Wish wish = row.reach().apply(walk, 10.0);
        long began = walk.nanos + row.rig().scanNanos();
        Set<Integer> named = new TreeSet<>();
        do {
            Scans scans = walk.next();
            scans = row.edge().at(scans, outside, (walk.nanos - began) * 1e-9);
            if (walk.scan(scans, Inbox.EMPTY, wish) instanceof Verdict.Unhealthy unhealthy) {
                named.add(unhealthy.first().rule().number());
                unhealthy.also().forEach(t -> named.add(t.rule().number()));
            }
        } while (walk.nanos - began < row.seconds() * 1e9);
        return named;
    }

    /** Switches and silences have no limit that could be moved; what needs hours is in ChargeRulesTest. */
    @Test
    void each_rule_with_a_figure_for_a_limit_has_a_row() {
        Set<Integer> missing = new TreeSet<>();
        Rules.of(PACK).stream().filter(r -> r.severity() != Severity.WARNS).forEach(r -> missing.add(r.number()));
        rows().forEach(row -> missing.remove(row.rule()));

        assertThat(missing).containsExactly(9, 10, 18, 29, 31, 32, 33, 34, 35, 36, 37, 39, 40, 41, 42, 43, 44, 45, 47, 48, 49, 55, 56);
    }
}
