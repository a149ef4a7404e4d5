package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.RestTrail;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.Warmth;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What is kept of a course carries the time at which it was so, however far apart the rows are. */
class TraceTimesTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final double WARMS_K_PER_HOUR = 3;
    private static final double FALLS_MV_PER_HOUR = 0.5;

    /** A place warms and a cell falls in a straight line, so that the value of a point is its time. */
    private static List<Row> straight(double everySeconds, double seconds) {
        return new WrittenRun(CELL, everySeconds).step(1, "rest", seconds, Ended.TIME, _ -> 0, t -> 20 + WARMS_K_PER_HOUR * t / 3600,
                t -> 3.40 - 1e-3 * FALLS_MV_PER_HOUR * t / 3600).rows();
    }

    private static Warmth body(List<Row> rows) {
        return WrittenRun.gathered(CELL, rows).steps().getFirst().warmth().stream().filter(w -> w.where().role() == Role.BODY).findFirst()
                .orElseThrow();
    }

    private static void everyPointIsAtItsTime(Warmth body, double untilHours) {
        double[] hours = body.hours();
        assertThat(hours).hasSizeBetween(20, 240);
        for (int i = 0; i < hours.length; i++) {
            assertThat(body.celsius()[i]).as("at %.3f h", hours[i]).isCloseTo(20 + WARMS_K_PER_HOUR * hours[i], within(0.07));
        }
        assertThat(hours[hours.length - 1]).isCloseTo(untilHours, within(untilHours / 60));
    }

    @Test
    void rows_a_minute_apart_over_seven_hours_keep_their_times() {
        everyPointIsAtItsTime(body(straight(60, 24_000)), 24_000 / 3600.0);
    }

    @Test
    void two_hours_without_a_row_are_two_hours() {
        for (int from : List.of(100, 1000, 5000)) {
            List<Row> rows = new ArrayList<>(straight(1, 14_400));
            rows.subList(from, from + 7200).clear();

            everyPointIsAtItsTime(body(rows), 4);
        }
    }

    @Test
    void a_long_rest_in_rows_of_every_four_hours_and_one_with_a_day_missing_keep_their_times() {
        List<Row> holed = new ArrayList<>(straight(60, 14 * 86_400));
        holed.subList(2000, 3440).clear();

        for (List<Row> rows : List.of(straight(4 * 3600, 14 * 86_400), holed)) {
            RestTrail rest = WrittenRun.gathered(CELL, rows).steps().getFirst().rest();
            double[] hours = rest.hours();
            assertThat(hours[hours.length - 1]).isCloseTo(14 * 24.0, within(1.5));
            for (int i = 0; i < hours.length; i++) {
                assertThat(rest.volts()[0][i]).as("at %.3f h", hours[i]).isCloseTo(3.40 - 1e-3 * FALLS_MV_PER_HOUR * hours[i], within(0.15e-3));
            }
        }
    }
}
