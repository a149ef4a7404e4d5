package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Step;

class LevelTest {
    private static final Step CHARGE = new Step.Charge(0, 20, 3.6, 5);
    private static final Step DISCHARGE = new Step.Discharge(1, 10, 2.5);

    @Test
    void a_fresh_run_knows_nothing_and_assumes_half_full() {
        Level level = Level.unknown(100);

        assertThat(level.known()).isFalse();
        assertThat(level.flowed(20).toFull()).isEqualTo(30, within(1e-9));
    }

    @Test
    void from_full_to_the_cut_off_the_capacity_is_measured() {
        Level full = Level.unknown(100).flowed(41).stepEnded(CHARGE, Ended.TAPER).stepBegun();

        Level empty = full.flowed(-97).stepEnded(DISCHARGE, Ended.CUT_OFF);

        assertThat(empty.measured()).isTrue();
        assertThat(empty.capacityAmpHours()).isEqualTo(97, within(1e-9));
        assertThat(empty.share()).isZero();
        assertThat(empty.flowed(38.8).share()).isEqualTo(0.4, within(1e-9));
    }

    @Test
    void a_charger_that_stops_leaves_what_was_counted_and_a_pulse_at_the_cut_off_measures_nothing() {
        Level half = Level.unknown(100).stepEnded(CHARGE, Ended.TAPER).stepBegun().flowed(-60);

        assertThat(half.flowed(10).stepEnded(CHARGE, Ended.CHARGER).share()).isEqualTo(0.5, within(1e-9));
        Level pulsed = half.stepEnded(new Step.Pulse(1, 5, 1, 50, 1), Ended.CUT_OFF);
        assertThat(pulsed.measured()).isFalse();
        assertThat(pulsed.share()).isEqualTo(0.4, within(1e-9));
        assertThat(half.stepEnded(new Step.Park(0, 20, 0.4, 3.6), Ended.CEILING).share()).isEqualTo(0.4, within(1e-9));
    }

    @Test
    void a_discharge_that_did_not_begin_full_measures_no_capacity() {
        Level empty = Level.unknown(100).flowed(-60).stepEnded(DISCHARGE, Ended.CUT_OFF);

        assertThat(empty.known()).isTrue();
        assertThat(empty.measured()).isFalse();
        assertThat(empty.toFull()).isEqualTo(100, within(1e-9));
    }
}
