package rigwarden.elsewhere;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.program.Ended;
import rigwarden.rig.Cells;

/** What the last row of a charge in a log from elsewhere shows of its end: 10 Ah, ceiling 3.65 V. */
class ShownTest {
    private static final Cells CELLS = new Cells(1, 1, 10, 3.65, 2.5, 0, 0);

    private static Shown charge(double firstAmps, double lastAmps, double lastVolts) {
        Shown shown = new Shown(CELLS);
        shown.take(firstAmps, 3.4, 3.4);
        shown.take(lastAmps, lastVolts, lastVolts);
        return shown;
    }

    @ParameterizedTest
    @CsvSource({"5,2.4,3.65,CEILING", "5,1.01,3.65,CEILING", "5,0.99,3.65,TAPER", "5,0.2,3.65,TAPER", "0.5,0.4,3.65,CEILING", "5,0.2,3.60,STOPPED"})
    void a_charge_is_full_only_where_its_current_came_down_to_what_our_own_programmes_take_for_full(double first, double last, double volts,
            Ended by) {
        assertThat(charge(first, last, volts).end("charge")).isEqualTo(by);
    }

    @Test
    void a_taper_that_the_map_states_and_the_current_does_not_show_was_an_end_at_the_ceiling() {
        assertThat(charge(5, 2.4, 3.65).supports(Ended.TAPER)).isFalse();
        assertThat(charge(5, 2.4, 3.65).instead(Ended.TAPER)).isEqualTo(Ended.CEILING);
        assertThat(charge(5, 2.4, 3.50).instead(Ended.TAPER)).isEqualTo(Ended.STOPPED);
        assertThat(charge(5, 0.2, 3.65).supports(Ended.TAPER)).isTrue();
    }
}
