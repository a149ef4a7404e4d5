package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import rigwarden.logbook.StoredEvent;

/** What a cell's file counts along its rows. */
class CellRowsTest {
    private static StoredEvent begun(int step, String kind) {
        return event("step_begun", OptionalInt.of(step), kind);
    }

    private static StoredEvent event(String kind, OptionalInt step, String words) {
        return new StoredEvent(1, 1, kind, step, words, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                OptionalDouble.empty());
    }

    private static double along(CellSums sums, double from, double seconds, double volts, double amps) {
        for (int i = 0; i <= seconds; i++) {
            sums.take(from + i, volts, amps);
        }
        return from + seconds;
    }

    /** Computed with the format's own formulas (check-values.md, 10.1): a row stands on both sides of each change of the current. */
    @Test
    void charge_and_energy_in_and_out_add_up_as_the_format_has_them() {
        CellSums sums = new CellSums();

        double rest = along(sums, 0, 360, 3.250, -10);
        List<String> discharged = sums.fields();
        double charge = along(sums, along(sums, rest, 60, 3.30, 0), 720, 3.40, 5);
        List<String> whole = sums.fields();

        assertThat(discharged).containsExactly("-32.500000", "0.000000", "1.000000", "-1.000000", "0.000000", "3.250000", "-3.250000");
        assertThat(whole).containsExactly("17.000000", "1.000000", "1.000000", "0.000000", "3.400000", "3.250000", "0.150000");
        assertThat(charge).isEqualTo(1140);
    }

    @Test
    void a_cycle_begins_where_a_charge_follows_a_discharge_and_steps_are_counted_through() {
        CellClock clock = new CellClock();

        clock.take(begun(1, "charge"));
        assertThat(List.of(clock.steps(), clock.cycles())).containsExactly(1, 0);
        clock.take(event("step_ended", OptionalInt.of(1), "ended by taper"));
        assertThat(clock.kind()).as("between two steps").isEmpty();
        clock.take(begun(2, "rest"));
        clock.take(begun(3, "heat_run"));
        clock.take(begun(4, "charge"));
        clock.take(event("warned", OptionalInt.empty(), "no step"));
        assertThat(List.of(clock.steps(), clock.cycles(), Integer.parseInt(clock.number()))).containsExactly(4, 1, 4);
        clock.take(begun(5, "charge"));
        assertThat(clock.cycles()).as("nothing was discharged between").isEqualTo(1);
    }
}
