package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Every time that must have passed before a rule speaks, or after which it is silent, to the nanosecond. */
class DelayTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();
    private static final long SECOND = Moment.SECOND;
    private static final long LONG = 1000 * SECOND;
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final int CHARGER = 0;
    private static final int INVERTER = 2;

    /**
     * One time.
     *
     * @param seconds where the rule turns
     * @param there what it finds after exactly so long: a breach or nothing
     * @param later what it finds a nanosecond away, on the side that breaches: after, or before
     */
    private record Row(int rule, String what, Rig rig, BiFunction<Moment, Long, Moment> at, double seconds, boolean there,
            boolean later) {}

    private static Row breachAfter(int rule, String what, Rig rig, double seconds, BiFunction<Moment, Long, Moment> at) {
        return new Row(rule, what, rig, at, seconds, false, true);
    }

    private static Row breachFrom(int rule, String what, Rig rig, double seconds, BiFunction<Moment, Long, Moment> at) {
        return new Row(rule, what, rig, at, seconds, true, true);
    }

    private static Row breachUpTo(int rule, String what, Rig rig, double seconds, BiFunction<Moment, Long, Moment> at) {
        return new Row(rule, what, rig, at, seconds, true, false);
    }

    private static Row breachBefore(int rule, String what, Rig rig, double seconds, BiFunction<Moment, Long, Moment> at) {
        return new Row(rule, what, rig, at, seconds, false, false);
    }

    private static List<Row> channels() {
        return List.of(
                breachFrom(31, "a probe of two scans, its period before included", CELL, 0.3, (m, t) -> m.failed(m.column("cell_01_c"), t)),
                breachAfter(32, "a probe of two scans", CELL, 0.5, (m, t) -> m.old(m.column("cell_01_c"), t)),
                breachFrom(34, "polled twice a second", CELL, 1.25, (m, t) -> m.failed(m.column("source_a"), t)),
                breachAfter(34, "polled twice a second", CELL, 1.25, (m, t) -> m.old(m.column("source_a"), t)),
                breachFrom(35, "source still on", CELL, 5, (m, t) -> m.off(t).set(Role.SOURCE_ON, 1)));
    }

    private static List<Row> contacts() {
        return List.of(
                breachAfter(42, "coil supply dead", CELL, 1.5,
                        (m, t) -> m.at(Closing.CONTACT, SOURCE, t, t).set(Role.COIL_FEED, 0)),
                breachAfter(43, "contact open", CELL, 0.3,
                        (m, t) -> m.at(Closing.CONTACT, SOURCE, t, LONG).set(Role.FEEDBACK, 0)),
                breachAfter(39, "current past the relay alone", CELL, 0.5,
                        (m, t) -> m.at(Closing.RELAY_ALONE, 1, t, LONG).set(Role.CURRENT, -5)),
                breachAfter(40, "contact that stays closed alone", CELL, 0.5, (m, t) -> m.at(Closing.CONTACTOR_ALONE, 1, t, LONG)),
                breachAfter(44, "stage holds", CELL, 1.2, (m, t) -> m.at(Closing.SILENCE, SOURCE, t, LONG)),
                breachBefore(49, "stage lets go", CELL, 0.3,
                        (m, t) -> m.at(Closing.SILENCE, SOURCE, t, LONG).set(Role.FEEDBACK, 0).set(Role.COIL_FEED, 0)),
                breachAfter(45, "contact closed", CELL, 0.5, (m, t) -> m.off(t).set(Role.FEEDBACK, 1)),
                breachAfter(46, "bus at the pack's voltage", CELL, 4, (m, t) -> m.off(t).set(Role.BUS_VOLTS, 3.3)),
                breachAfter(47, "pre-charge", CELL, 5, (m, t) -> m.at(Closing.PRECHARGE, SOURCE, t, LONG).set(Role.BUS_VOLTS, 2)),
                breachAfter(18, "charger gives nothing", PACK, 40, (m, t) -> m.at(Closing.NO_LOAD, CHARGER, t, LONG)),
                breachAfter(19, "bus alive", CELL, 4, (m, t) -> m.off(t).set(Role.BUS_VOLTS, 2.5)));
    }

    private static List<Row> currents() {
        return List.of(
                breachFrom(15, "current although off", CELL, 0.5, (m, t) -> m.off(t).set(Role.CURRENT, 5)),
                breachAfter(13, "first current", CELL, 4, (m, t) -> m.flowing(SOURCE, 21, t).set(Role.CURRENT, 0)
                        .ordered(21, 21, LONG)),
                breachAfter(13, "new order: two polls and a second", CELL, 2, (m, t) -> m.flowing(SOURCE, 21, LONG).ordered(21, 1, t)
                        .set(Role.CURRENT, 1)),
                breachAfter(13, "start, pause and four seconds of an inverter", PACK, 5 + 66 + 4,
                        (m, t) -> m.flowing(INVERTER, 75, t).flowedAgo(LONG).ordered(75, 75, LONG).set(Role.CURRENT, 0)),
                breachAfter(13, "pause of its thermostat, its start, a second", PACK, 66,
                        (m, t) -> m.flowing(INVERTER, 75, LONG).flowedAgo(t).set(Role.CURRENT, 0)),
                breachAfter(13, "a charger's start has no pause", PACK, 34,
                        (m, t) -> m.flowing(CHARGER, 21, t).flowedAgo(0).ordered(21, 21, LONG).set(Role.CURRENT, 0)),
                breachAfter(11, "old order counts", CELL, 2, (m, t) -> m.flowing(SOURCE, 5, LONG).ordered(5, 21, t).set(Role.CURRENT, 21)));
    }

    private static List<Row> temperatures() {
        Trail fast = risingBy(20);
        return List.of(
                breachUpTo(26, "early", CELL, 300, (m, t) -> m.at(Closing.CURRENT, SINK, t, t).trail(fast)),
                breachAfter(27, "late", CELL, 300, (m, t) -> m.at(Closing.CURRENT, SINK, t, t).trail(fast)));
    }

    /** Every channel warms by so many kelvin a minute. */
    private static Trail risingBy(double perMinute) {
        Trail trail = Trail.EMPTY;
        for (int i = 0; i < 13; i++) {
            Moment moment = new Moment(CELL).set(Role.STUD, 22 + perMinute * i / 6);
            trail = trail.with(new Scan(i, Moment.NOW + 10 * SECOND * i, moment.scan().readings()), moment.places.temperatures);
        }
        return trail;
    }

    @TestFactory
    Stream<DynamicTest> a_rule_turns_at_its_time() {
        return Stream.of(channels(), contacts(), currents(), temperatures()).flatMap(List::stream)
                .map(row -> DynamicTest.dynamicTest("rule " + row.rule() + ", " + row.what(), () -> {
                    long there = Math.round(row.seconds() * 1e9);

                    assertThat(found(row, there - 1)).as("a nanosecond sooner").isEqualTo(!row.later());
                    assertThat(found(row, there)).as("then").isEqualTo(row.there());
                    assertThat(found(row, there + 1)).as("a nanosecond later").isEqualTo(row.later());
                }));
    }

    private static boolean found(Row row, long nanos) {
        return row.at().apply(new Moment(row.rig()), nanos).look(row.rule()).found();
    }
}
