package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;

/**
 * The heartbeat stage over the tolerances of its parts: as drawn, and eight stages with every part at one end of its tolerance, or as
 * many as {@code -Drigwarden.stages} says, every second of them drawn from between the ends.
 */
class HeartbeatStageTest {
    private static final int STAGES = Integer.getInteger("rigwarden.stages", 8);
    private static final double SHORTEST = 0.6;
    private static final double LONGEST = 1.0;

    private final List<Stage> stages = stages();

    @Test
    void a_line_stuck_high_or_low_lets_the_coil_supply_drop_in_time() throws Exception {
        drops("stuck high", Beats.none().then(0.1, 23, Beats.PERIOD));
        drops("stuck low", Beats.none().then(0.1, 24, Beats.PERIOD));
    }

    @Test
    void three_missed_beats_are_borne_and_a_line_that_stands_still_right_after_them_is_not() throws Exception {
        drops("3 missed, 10 more, stuck", Beats.none().then(0.1, 20, Beats.PERIOD).then(4 * Beats.PERIOD, 10, Beats.PERIOD));
        drops("3 missed, 1 more, stuck", Beats.none().then(0.1, 20, Beats.PERIOD).then(4 * Beats.PERIOD, 1, Beats.PERIOD));
    }

    @Test
    void a_line_that_toggles_too_slowly_lets_the_supply_drop_and_never_gets_it_back() throws Exception {
        Beats quick = Beats.none().then(0.1, 20, Beats.PERIOD);
        Figures figures = new Figures();

        for (Stage stage : stages) {
            figures.of(stage.run(quick.then(1.1, 4, 1.1), 7, measures(quick.last(), 7)), quick.last());
        }

        figures.print("one edge in 1.1 s");
    }

    @Test
    void a_line_that_toggles_slowly_from_the_start_never_gets_a_supply() throws Exception {
        for (Stage stage : stages) {
            Map<String, Double> seen = stage.run(Beats.none().then(0.5, 6, 1.1), 7, ".meas tran most max v(feed) from=0 to=7");

            assertThat(seen.get("most")).as("coil supply of %s, V", stage).isLessThan(1);
        }
    }

    @Test
    void with_one_capacitor_shorted_or_one_resistor_broken_it_lets_go_late_and_the_first_minute_s_test_shows_it() throws Exception {
        for (String fault : List.of("short=1", "rh=20meg")) {
            for (int edges : List.of(33, 34)) {
                Beats beats = Beats.none().then(0.1, edges, Beats.PERIOD);
                Map<String, Double> seen = Stage.broken(fault).run(beats, beats.last() + 3, """
                        .meas tran held find v(feed) at=%1$f
                        .meas tran end when v(feed)=12 fall=last
                        .meas tran most max v(feed) from=%2$f to=%3$f
                        """.formatted(beats.last(), beats.last() + 2.5, beats.last() + 3));

                System.out.printf(Locale.ROOT, "%-26s %-9s drops after %.3f s%n", "heartbeat, " + fault, edges % 2 == 0 ? "low" : "high",
                        seen.get("end") - beats.last());
                assertThat(seen.get("held")).isGreaterThan(20);
                assertThat(seen.get("most")).isLessThan(1);
                assertThat(seen.get("end") - beats.last()).isGreaterThan(LONGEST);
            }
        }
    }

    private void drops(String name, Beats beats) throws Exception {
        Figures figures = new Figures();
        for (Stage stage : stages) {
            figures.of(stage.run(beats, beats.last() + 1.6, measures(beats.last(), beats.last() + 1.6)), beats.last());
        }
        figures.print(name);
    }

    /** The feed's least while it must hold, from a second after the first beat on; its most when it must be gone; when it went. */
    private static String measures(double last, double end) {
        return String.format(Locale.ROOT, """
                .meas tran least min v(feed) from=1.1 to=%f
                .meas tran most max v(feed) from=%f to=%f
                .meas tran gone when v(feed)=12 fall=last""", last + SHORTEST, last + LONGEST, end);
    }

    private static List<Stage> stages() {
        List<Stage> stages = new ArrayList<>(List.of(Stage.asDrawn()));
        RandomGenerator chance = Chance.of(31, "heartbeat", "tolerances");
        for (int stage = 0; stage < STAGES; stage++) {
            stages.add(Stage.drawn(chance, STAGES <= 8 || stage % 2 == 0));
        }
        return stages;
    }

    /** What one scenario gave over all stages. */
    private static final class Figures {
        private double shortest = Double.MAX_VALUE;
        private double longest;
        private double drawn = Double.NaN;

        void of(Map<String, Double> seen, double last) {
            double after = seen.get("gone") - last;
            drawn = Double.isNaN(drawn) ? after : drawn;
            shortest = Math.min(shortest, after);
            longest = Math.max(longest, after);
            assertThat(seen.get("least")).as("coil supply until 0.6 s after the last beat, V").isGreaterThan(20);
            assertThat(seen.get("most")).as("coil supply from 1.0 s after the last beat, V").isLessThan(1);
        }

        void print(String name) {
            System.out.printf(Locale.ROOT, "heartbeat, %-26s %3d stages: drops after %.3f to %.3f s, as drawn %.3f s%n", name, STAGES + 1,
                    shortest, longest, drawn);
        }
    }
}
