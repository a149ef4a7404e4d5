package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Step;

class EndingsTest {
    private static final Step CHARGE = new Step.Charge(0, 20, 3.6, 5);
    private static final long HOUR = 3600_000_000_000L;

    private static Doing doing(double amps) {
        return new Doing(Phase.CURRENT, 1, "step", 0, amps, Optional.empty());
    }

    private static double hours(Forecast forecast) {
        return forecast.leftNanos().orElseThrow() / (double) HOUR;
    }

    @Test
    void a_discharge_ends_when_the_charge_still_there_has_gone_at_this_current() {
        Level level = Level.unknown(100).stepEnded(CHARGE, Ended.TAPER).stepBegun().flowed(-30);

        Forecast forecast = Endings.of(new Step.Discharge(1, 10, 2.5), false, doing(-10), level, new Falling(), 3 * HOUR);

        assertThat(hours(forecast)).isEqualTo(7, within(0.01));
        assertThat(forecast.ends()).isEqualTo("the first cell at 2.50 V");
        assertThat(forecast.basis()).contains("rated capacity");
    }

    @Test
    void a_discharge_that_gives_more_than_was_counted_on_is_given_no_figure() {
        Level level = Level.unknown(100).stepEnded(CHARGE, Ended.TAPER).stepBegun().flowed(-101);

        Forecast forecast = Endings.of(new Step.Discharge(1, 10, 2.5), false, doing(-10), level, new Falling(), 0);

        assertThat(forecast.leftNanos()).isEmpty();
    }

    @Test
    void a_falling_current_tells_when_it_meets_its_taper() {
        Falling falling = new Falling();
        for (int minute = 0; minute < 10; minute++) {
            falling.take(minute * HOUR / 60, 20 * Math.exp(-minute / 30.0));
        }

        Forecast forecast = Endings.of(new Step.Charge(0, 20, 3.6, 5), false, doing(15), Level.unknown(100), falling, HOUR / 6);

        double now = 20 * Math.exp(-9 / 30.0);
        assertThat(hours(forecast)).isEqualTo(0.5 * Math.log(now / 5), within(0.01));
    }

    @Test
    void a_rest_lasts_its_least_time_and_then_as_long_as_the_cells_need() {
        Step.Rest rest = new Step.Rest(2 * HOUR, 3 * HOUR);
        Doing doing = new Doing(Phase.RESTING, 2, "rest", 0, 0, Optional.empty());

        Forecast early = Endings.of(rest, false, doing, Level.unknown(100), new Falling(), HOUR);
        Forecast late = Endings.of(rest, false, doing, Level.unknown(100), new Falling(), 5 * HOUR / 2);

        assertThat(hours(early)).isEqualTo(1, within(0.01));
        assertThat(late.basis()).contains("least time is over");
        assertThat(hours(late)).isEqualTo(0.5, within(0.01));
    }

    @Test
    void a_charger_and_an_inverter_may_end_a_step_by_themselves_and_the_words_say_so() {
        Level level = Level.unknown(100);

        Forecast charge = Endings.of(new Step.Charge(0, 20, 3.6, 3), true, doing(20), level, new Falling(), 0);
        Forecast heat = Endings.of(new Step.HeatRun(1, 70, 2.5, 2 * HOUR), true, doing(-60), level, new Falling(), 0);

        assertThat(charge.ends())
                .isEqualTo("the charger itself (full below 3.0 A), or before that the first cell at 3.60 V: then not quite full");
        assertThat(heat.ends()).isEqualTo("the first cell at 2.50 V, or the load giving up, or 120 min");
    }
}
