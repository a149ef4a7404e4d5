package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Failure;
import rigwarden.warden.Scans;

/** Between which voltages a cell would come to rest, by what was seen of it. */
class RestBracketsTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final long MINUTE = 60_000_000_000L;
    private static final double NEAR = 0.005;

    private final RestBrackets brackets = new RestBrackets(CELL);
    private long nanos;

    private void see(double amps, double volts) {
        brackets.take(new Scans(CELL, nanos).set(Role.CURRENT, amps).set(Role.CELL_VOLTS, volts).scan(1));
        nanos += MINUTE;
    }

    private void holds(double low, double high) {
        Bracket one = brackets.brackets().getFirst();
        assertThat(one.lowVolts()).as("lowest").isCloseTo(low - NEAR, within(1e-4));
        assertThat(one.highVolts()).as("highest").isCloseTo(high + NEAR, within(1e-4));
    }

    @Test
    void of_a_cell_that_was_only_looked_at_fifty_millivolts_either_way_are_possible() {
        assertThat(brackets.brackets()).isEmpty();

        see(0, 3.30);
        see(0, 3.31);

        holds(3.25, 3.35);
    }

    @Test
    void under_discharge_it_is_the_low_end_and_where_it_rested_the_high_one() {
        see(0, 3.30);
        see(-20, 3.20);
        holds(3.20, 3.35);

        see(-20, 3.15);
        holds(3.15, 3.35);

        see(0, 3.25);
        holds(3.25, 3.35);
    }

    @Test
    void under_charge_it_is_the_high_end() {
        see(0, 3.30);
        see(20, 3.40);
        holds(3.25, 3.40);

        see(0, 3.36);
        holds(3.25, 3.36);
    }

    @Test
    void an_end_never_passes_the_other() {
        see(0, 3.30);
        see(-20, 3.40);
        holds(3.35, 3.35);

        see(20, 3.20);
        holds(3.35, 3.35);
    }

    @Test
    void a_rest_of_ten_minutes_tells_it_by_three_times_what_it_moved_in_them() {
        see(0, 3.30);
        see(-20, 3.20);
        for (int minute = 0; minute < 10; minute++) {
            see(0, 3.25 + minute * 0.001);
        }
        holds(3.259, 3.35);

        see(0, 3.26);
        holds(3.26, 3.26 + 3 * 0.010);

        see(0, 3.2605);
        holds(3.2605, 3.2605 + 3 * 0.0095);
    }

    @Test
    void one_that_falls_at_rest_goes_on_falling() {
        for (int minute = 0; minute <= 10; minute++) {
            see(0, 3.50 - minute * 0.002);
        }

        holds(3.48 - 3 * 0.020, 3.48);
    }

    @Test
    void looks_between_the_minutes_are_not_counted_and_a_current_begins_the_rest_anew() {
        for (int look = 0; look < 20; look++) {
            see(0, 3.40);
            nanos -= MINUTE / 2 + 1;
        }
        holds(3.35, 3.45);

        see(-20, 3.30);
        see(0, 3.38);
        for (int minute = 0; minute < 9; minute++) {
            see(0, 3.38);
        }
        holds(3.38, 3.45);
    }

    @Test
    void a_scan_without_the_cell_is_passed_over() {
        see(0, 3.30);
        brackets.take(new Scans(CELL, nanos).failed(CELL.channel(Role.CELL_VOLTS), Failure.NO_ANSWER, 0).scan(2));

        holds(3.25, 3.35);
    }
}
