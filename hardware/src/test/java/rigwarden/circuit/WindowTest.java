package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;
import rigwarden.rig.Guards;

/** The cell window: where it opens over the tolerances of its parts, what it does to the loop, and what one fault of it takes away. */
class WindowTest {
    private static final int WINDOWS = Integer.getInteger("rigwarden.stages", 8);
    /** Ends of its reference over temperature, of its resistors, and of a comparator's offset in V. */
    private static final double REFERENCE = 0.002;
    private static final double RESISTOR = 0.001;
    private static final double OFFSET = 0.005;
    /** How far from its stated edges it may open, V. */
    private static final double WITHIN = 0.02;

    private static final String RISES = "pwl(0 3.3 0.5 3.3 6 3.85)";
    private static final String FALLS = "pwl(0 3.3 0.5 3.3 6 2.2)";
    private static final String RESET = "pwl(0 0 0.05 0 0.0501 1 0.15 1 0.1501 0)";
    private static final String STOPPED_LATE = "pwl(0 0 0.05 0 0.0501 1 0.15 1 0.1501 0 5 0 5.0001 1 5.2 1 5.2001 0)";

    @Test
    void it_opens_at_the_stated_voltages_whatever_its_parts_tolerances() throws Exception {
        Guards stated = PrechargeTest.rig("one-cell").guards();
        RandomGenerator chance = Chance.of(31, "window", "tolerances");
        double[] high = {9, 0};
        double[] low = {9, 0};

        for (int window = 0; window <= WINDOWS; window++) {
            String parts = window == 0 ? "" : parts(chance);
            double opensHigh = opens(RISES, parts);
            double opensLow = opens(FALLS, parts);
            high = new double[] {Math.min(high[0], opensHigh), Math.max(high[1], opensHigh)};
            low = new double[] {Math.min(low[0], opensLow), Math.max(low[1], opensLow)};

            assertThat(opensHigh).as("high edge of %s, V", parts).isEqualTo(stated.windowHighVolts(), within(WITHIN));
            assertThat(opensLow).as("low edge of %s, V", parts).isEqualTo(stated.windowLowVolts(), within(WITHIN));
        }

        System.out.printf(Locale.ROOT, "cell window, %d of them: opens at %.3f to %.3f V and at %.3f to %.3f V%n", WINDOWS + 1, high[0], high[1],
                low[0], low[1]);
    }

    @Test
    void a_cell_beyond_an_edge_takes_the_feed_from_every_coil() throws Exception {
        for (String beyond : List.of("3.9", "2.1")) {
            Map<String, Double> seen = charged(beyond, 0, "").parameters("lk1=1.8 copper=0.79").with("vs", "26.4")
                    .measure("before", "find v(feed) at=" + (Chain.EVENT - 0.1)).measure("k1", "when v(p1)=0.1 fall=last")
                    .measure("k2", "when v(p2)=0.1 fall=last").measure("most", "max v(feed) from=3.6 to=6").run();

            System.out.printf(Locale.ROOT, "cell window, cell at %s V: K1 opens after %.1f ms, the second element after %.1f ms%n", beyond,
                    (seen.get("k1") - Chain.EVENT) * 1e3, (seen.get("k2") - Chain.EVENT) * 1e3);
            assertThat(seen.get("before")).isGreaterThan(20);
            assertThat(seen.get("k1") - Chain.EVENT).isBetween(0.001, 0.05);
            assertThat(seen.get("k2") - Chain.EVENT).isBetween(0.001, 0.05);
            assertThat(seen.get("most")).isLessThan(1);
        }
    }

    @Test
    void a_cell_that_comes_back_closes_nothing_even_where_the_latch_of_the_loop_sticks_and_only_a_reset_does() throws Exception {
        Beats paused = Chain.UNTIL_EVENT.then(2, 6, Beats.PERIOD);
        for (String stuck : List.of("", "weldsl=3.3")) {
            Map<String, Double> back = charged("3.9", 0.3, "").parameters(stuck).measure("most", "max v(feed) from=3.6 to=6").run();
            assertThat(back.get("most")).as("coil feed with %s, V", stuck).isLessThan(1);
        }
        Map<String, Double> reset = charged("3.9", 0.3, "").with("reset", STOPPED_LATE).beats(paused)
                .measure("still", "max v(feed) from=3.6 to=5.3").measure("again", "find v(feed) at=6").run();
        Map<String, Double> beyond = charged("3.9", 0, "").with("reset", STOPPED_LATE).beats(paused).measure("most", "max v(feed) from=3.6 to=6").run();

        assertThat(reset.get("still")).as("coil feed before the beats begin anew, V").isLessThan(1);
        assertThat(reset.get("again")).as("coil feed after the reset, V").isGreaterThan(20);
        assertThat(beyond.get("most")).as("coil feed after a reset with the cell still beyond, V").isLessThan(1);
    }

    @Test
    void a_broken_sense_lead_and_a_dead_supply_open_it() throws Exception {
        Map<String, Double> lead = window("3.3", "12", RESET, "lead=100meg", ".meas tran most max v(pos) from=0.3 to=2");
        Map<String, Double> supply = window("3.3", "pwl(0 12 1 12 1.0001 0)", RESET, "", """
                .meas tran before find v(pos) at=0.9
                .meas tran most max v(pos) from=1.1 to=2""");

        assertThat(lead.get("most")).as("KW with its sense lead broken").isLessThan(0.1);
        assertThat(supply.get("before")).isGreaterThan(0.9);
        assertThat(supply.get("most")).as("KW without a supply").isLessThan(0.1);
    }

    /** The guide states it, and that the bench voltage of part 2 finds it. */
    @Test
    void an_input_that_sticks_high_takes_its_own_edge_away_and_leaves_the_other() throws Exception {
        String end = ".meas tran end find v(pos) at=2";
        String over = "pwl(0 3.3 1 3.3 1.01 3.9)";
        String under = "pwl(0 3.3 1 3.3 1.01 2.1)";

        assertThat(window(over, "12", RESET, "stuckh=1", end).get("end")).as("the weakness").isGreaterThan(0.9);
        assertThat(window(under, "12", RESET, "stuckh=1", end).get("end")).isLessThan(0.1);
        assertThat(window(under, "12", RESET, "stuckl=1", end).get("end")).as("the weakness").isGreaterThan(0.9);
        assertThat(window(over, "12", RESET, "stuckl=1", end).get("end")).isLessThan(0.1);
    }

    /** The chain with a window; its cell goes beyond at the event and comes back after so many seconds, 0 for never. */
    private static Chain charged(String beyond, double backAfter, String parts) {
        double back = Chain.EVENT + backAfter;
        String course = String.format(Locale.ROOT, "pwl(0 3.3 %1$f 3.3 %2$f %3$s%4$s)", Chain.EVENT, Chain.EVENT + 1e-4, beyond,
                backAfter == 0 ? "" : String.format(Locale.ROOT, " %f %s %f 3.3", back, beyond, back + 0.01));
        return new Chain().cell(course, parts);
    }

    /** Voltage of the cell when the armature of KW falls, on its slow way there. */
    private static double opens(String course, String parts) throws Exception {
        return window(course, "12", RESET, parts, ".meas tran volts find v(cell) when v(pos)=0.4 fall=last", 6).get("volts");
    }

    private static Map<String, Double> window(String cell, String supply, String reset, String parts, String measures) throws Exception {
        return window(cell, supply, reset, parts, measures, 2);
    }

    private static Map<String, Double> window(String cell, String supply, String reset, String parts, String measures, double seconds)
            throws Exception {
        return Ngspice.lines(String.format(Locale.ROOT, """
                Vcell cell 0 %s
                Vw vw 0 %s
                Vreset reset 0 %s
                X1 cell vw reset pos window %s
                .tran 1m %.1f 0 1m uic
                %s""", cell, supply, reset, parts, seconds, measures));
    }

    private static String parts(RandomGenerator chance) {
        DoubleUnaryOperator end = by -> chance.nextBoolean() ? by : -by;
        return String.format(Locale.ROOT, "vref=%.5f rtop=%.3fk rbot=%.3fk r1=%.5fk r2=%.3fk offh=%.1fm offl=%.1fm copper=%.2f",
                2.5 * (1 + end.applyAsDouble(REFERENCE)), 10 * (1 + end.applyAsDouble(RESISTOR)), 20 * (1 + end.applyAsDouble(RESISTOR)),
                1.74 * (1 + end.applyAsDouble(RESISTOR)), 20 * (1 + end.applyAsDouble(RESISTOR)), end.applyAsDouble(OFFSET) * 1e3,
                end.applyAsDouble(OFFSET) * 1e3, 1 + end.applyAsDouble(0.21));
    }
}
