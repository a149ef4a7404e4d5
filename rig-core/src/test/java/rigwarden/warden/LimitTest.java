package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/**
 * Every limit on one reading, to the last bit: where it turns with instruments that are never wrong, and how far their
 * uncertainty moves it, to which side. Figures are the safety page's, not the code's.
 */
class LimitTest {
    /** Uncertainties by which a difference of two like probes moves a limit. */
    private static final double BOTH = Math.sqrt(2);
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();
    private static final long LONG = 100 * Moment.SECOND;
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final int CHARGER = 0;
    private static final int INVERTER = 2;
    private static final double MOST_AMPS = PACK.devices().get(INVERTER).maxAmps();

    /** What a reading at the very limit is. */
    private enum There {
        HEALTHY,
        BREACH,
        /** The limit is no number that can be hit: it was computed. */
        EITHER
    }

    /**
     * One limit.
     *
     * @param where column that is named
     * @param at tells the moment with a reading
     * @param widens uncertainties of the named channel by which the limit moves up
     */
    private record Row(int rule, String what, Rig rig, String where, BiFunction<Moment, Double, Moment> at, double healthy,
            double breaching, double limit, There there, double widens) {}

    private static BiFunction<Moment, Double, Moment> set(Role role) {
        return (m, v) -> m.set(role, v);
    }

    private static BiFunction<Moment, Double, Moment> charging(BiFunction<Moment, Double, Moment> then) {
        return (m, v) -> then.apply(m.flowing(SOURCE, 21, LONG), v);
    }

    private static BiFunction<Moment, Double, Moment> draining(BiFunction<Moment, Double, Moment> then) {
        return (m, v) -> then.apply(m.flowing(SINK, 21, LONG), v);
    }

    private static List<Row> voltages() {
        BiFunction<Moment, Double, Moment> cells = set(Role.CELL_VOLTS);
        BiFunction<Moment, Double, Moment> bus = set(Role.BUS_VOLTS);
        return List.of(
                new Row(1, "cell high", CELL, "cell_01_v", cells, 3.3, 4.2, 3.70, There.BREACH, -1),
                new Row(2, "cell low in discharge", CELL, "cell_01_v", draining(cells), 3.3, 1.5, 2.40, There.BREACH, 1),
                new Row(2, "cell low at rest", CELL, "cell_01_v", cells, 3.3, 1.5, 2.40, There.BREACH, 1),
                new Row(3, "cell low in charge", CELL, "cell_01_v", charging(cells), 3.3, 1.5, 2.00, There.HEALTHY, 1),
                new Row(17, "charger's voltage", PACK, "bus_v", (m, v) -> m.at(Closing.NO_LOAD, CHARGER, LONG, LONG).set(Role.BUS_VOLTS, v),
                        28, 31, 29.2, There.HEALTHY, -1),
                new Row(19, "bus alive", CELL, "bus_v", bus, 0, 2.5, 1.65, There.HEALTHY, 0),
                new Row(19, "bus alive without a pack", CELL, "bus_v", (m, v) -> m.set(Role.PACK_VOLTS, 0.4).set(Role.BUS_VOLTS, v),
                        0, 2.5, 0.5, There.HEALTHY, 0),
                new Row(46, "bus at the pack's voltage", CELL, "bus_v", bus, 0, 3.3, 0.95 * 3.3, There.EITHER, 0),
                new Row(33, "a tap that is off", CELL, "cell_01_v", cells, 3.3, 0, 1.0, There.HEALTHY, 0),
                new Row(33, "a cut thermocouple", CELL, "cell_01_c", set(Role.BODY), 22, 200, 125, There.HEALTHY, 0),
                new Row(56, "more volts than a source can give", CELL, "source_v", (m, v) -> m.set("source_v", v), 3.3, 50, 1.2 * 3.65 + 1,
                        There.HEALTHY, 0),
                new Row(33, "a dead junction", CELL, "cell_01_c", set(Role.BODY), 22, -200, -40, There.HEALTHY, 0));
    }

    private static List<Row> currents() {
        BiFunction<Moment, Double, Moment> in = set(Role.CURRENT);
        BiFunction<Moment, Double, Moment> out = (m, v) -> m.set(Role.CURRENT, -v);
        return List.of(
                new Row(11, "110 % in", CELL, "current_a", charging(in), 21, 60, 24.1, There.HEALTHY, 1),
                new Row(11, "110 % out", CELL, "current_a", draining(out), 21, 60, 24.1, There.HEALTHY, 1),
                new Row(12, "150 % in", CELL, "current_a", charging(in), 21, 60, 32.5, There.HEALTHY, 1),
                new Row(12, "150 % out", CELL, "current_a", draining(out), 21, 60, 32.5, There.HEALTHY, 1),
                new Row(11, "what the pre-charge resistor lets through", PACK, "current_a",
                        (m, v) -> m.at(Closing.PRECHARGE, SINK, LONG, LONG).set(Role.CURRENT, v), 0, 9, 1.1 * 2.64 + 1, There.HEALTHY, 1),
                new Row(11, "in pre-charge with the pack unseen", PACK, "current_a",
                        (m, v) -> m.at(Closing.PRECHARGE, SINK, LONG, LONG).failed(Role.PACK_VOLTS).set(Role.CURRENT, v), 0, 9, 1, There.HEALTHY, 1),
                new Row(11, "closed and nothing ordered", PACK, "current_a",
                        (m, v) -> m.at(Closing.CONTACT, SINK, LONG, LONG).set(Role.CURRENT, v), 0, 9, 1, There.HEALTHY, 1),
                new Row(13, "a tenth in", CELL, "current_a", charging(in), 21, 0, 2.1, There.HEALTHY, 0),
                new Row(13, "a tenth out", CELL, "current_a", draining(out), 21, 0, 2.1, There.HEALTHY, 0),
                new Row(13, "1 A of a device that does as it likes", PACK, "current_a",
                        (m, v) -> m.flowing(INVERTER, MOST_AMPS, LONG).flowedAgo(LONG).set(Role.CURRENT, -v), 50, 0, 1, There.HEALTHY, 0),
                new Row(14, "out of a charge", CELL, "current_a", charging(out), 0, 9, 1, There.HEALTHY, 1),
                new Row(14, "into a discharge", CELL, "current_a", draining(in), 0, 9, 1, There.HEALTHY, 1),
                new Row(39, "out although the relay alone is open", CELL, "current_a",
                        (m, v) -> m.at(Closing.RELAY_ALONE, SINK, Moment.SECOND, LONG).set(Role.CURRENT, -v), 0, 9, 1, There.HEALTHY, 1),
                new Row(40, "out although the contactor alone is open", CELL, "current_a",
                        (m, v) -> m.at(Closing.CONTACTOR_ALONE, SINK, Moment.SECOND, LONG).set(Role.FEEDBACK, 0).set(Role.CURRENT, -v), 0, 9, 1,
                        There.HEALTHY, 1),
                new Row(15, "in although off", CELL, "current_a", in, 0, 9, 1, There.HEALTHY, 1),
                new Row(15, "out although off", CELL, "current_a", out, 0, 9, 1, There.HEALTHY, 1));
    }

    private static List<Row> temperatures() {
        BiFunction<Moment, Double, Moment> body = set(Role.BODY);
        BiFunction<Moment, Double, Moment> shunt = set(Role.SHUNT_BODY);
        return List.of(
                new Row(21, "charging", CELL, "cell_01_c", charging(body), 22, 80, 45, There.HEALTHY, -1),
                new Row(21, "discharging", CELL, "cell_01_c", draining(body), 22, 80, 55, There.HEALTHY, -1),
                new Row(21, "at rest", CELL, "cell_01_c", body, 22, 80, 55, There.HEALTHY, -1),
                new Row(22, "charging", CELL, "cell_01_c", charging(body), 22, -30, 2, There.HEALTHY, 1),
                new Row(22, "discharging", CELL, "cell_01_c", draining(body), 22, -30, -10, There.HEALTHY, 1),
                new Row(22, "at rest", CELL, "cell_01_c", body, 22, -30, -10, There.HEALTHY, 1),
                new Row(23, "contactor", CELL, "contactor_c", set(Role.CONTACTOR_BODY), 22, 90, 60, There.HEALTHY, -1),
                new Row(24, "at rest", CELL, "shunt_c", shunt, 22, 90, 57, There.HEALTHY, -BOTH),
                new Row(24, "the room as it is", CELL, "shunt_c", charging((m, v) -> m.roomAtClosing(22).set(Role.ROOM, 25).set(Role.SHUNT_BODY, v)),
                        22, 90, 60, There.HEALTHY, -BOTH),
                new Row(24, "the room as it was, and five kelvin", CELL, "shunt_c",
                        charging((m, v) -> m.roomAtClosing(18).set(Role.ROOM, 30).set(Role.SHUNT_BODY, v)), 22, 90, 58, There.HEALTHY, -BOTH),
                new Row(25, "terminal", CELL, "terminal_01n_c", (m, v) -> m.set("terminal_01n_c", v), 22, 90, 42, There.HEALTHY, -BOTH),
                new Row(28, "bar beside six", PACK, "bar_03_c", (m, v) -> m.flowing(INVERTER, 75, LONG).set("bar_03_c", v), 22, 90, 27, There.HEALTHY, 1),
                new Row(28, "one of two terminals", CELL, "terminal_01n_c", charging((m, v) -> m.set("terminal_01n_c", v)), 22, 90, 27, There.HEALTHY, 1),
                new Row(30, "probe that fell off", CELL, "terminal_01p_c", charging((m, v) -> m.set(Role.BODY, 38).set("terminal_01p_c", v)
                        .set("terminal_01n_c", 38)), 38, 20, 26, There.HEALTHY, 0));
    }

    private static List<Row> records() {
        return List.of(
                new Row(51, "recorder", CELL, "recorder_lag_s", set(Role.RECORDER_LAG), 0, 90, 10, There.HEALTHY, 0),
                new Row(52, "recorder", CELL, "recorder_lag_s", set(Role.RECORDER_LAG), 0, 90, 3, There.HEALTHY, 0),
                new Row(53, "card", CELL, "free_bytes", set(Role.FREE_SPACE), 1e9, 0, 64e6, There.HEALTHY, 0),
                new Row(54, "loop", CELL, "lateness_s", set(Role.LATENESS), 0, 9, 0.3, There.HEALTHY, 0));
    }

    private static Stream<Row> rows() {
        return Stream.of(voltages(), currents(), temperatures(), records()).flatMap(List::stream);
    }

    private static Edge edge(Row row, Rig rig) {
        return Edge.between(row.healthy(), row.breaching(), v -> row.at().apply(new Moment(rig), v).look(row.rule()));
    }

    @TestFactory
    Stream<DynamicTest> a_limit_turns_at_its_figure_and_names_what_was_read_where() {
        return rows().map(row -> DynamicTest.dynamicTest("rule " + row.rule() + ", " + row.what(), () -> {
            Rig rig = TestRigs.exact(row.rig());
            Edge edge = edge(row, rig);
            Breach breach = edge.breach();

            assertThat(edge.outside()).isCloseTo(row.limit(), within(1e-9 * Math.max(1, row.limit())));
            assertThat(Math.abs(breach.limit())).isCloseTo(Math.abs(row.limit()), within(1e-9));
            assertThat(Math.abs(breach.value())).isEqualTo(Math.abs(edge.outside()));
            assertThat(rig.channels().get(breach.channel()).name()).isEqualTo(row.where());
            switch (row.there()) {
                case HEALTHY -> assertThat(Math.abs(edge.inside())).as("at the limit").isEqualTo(Math.abs(breach.limit()));
                case BREACH -> assertThat(edge.outside()).as("at the limit").isEqualTo(row.limit());
                case EITHER -> { }
            }
        }));
    }

    /** Safety page, section 2: limits hold for the true value; where only the sensor could be wrong, it is given the benefit. */
    @TestFactory
    Stream<DynamicTest> a_limit_moves_by_the_uncertainty_to_the_side_that_is_written() {
        return rows().map(row -> DynamicTest.dynamicTest("rule " + row.rule() + ", " + row.what(), () -> {
            double u = row.rig().column(row.where()).orElseThrow().uncertainty(row.limit());

            assertThat(edge(row, row.rig()).outside()).isCloseTo(row.limit() + row.widens() * u, within(0.02 * u + 1e-9 * Math.max(1, row.limit())));
        }));
    }
}
