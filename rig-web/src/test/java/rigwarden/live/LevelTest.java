package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;

class LevelTest {
    @Test
    void a_fresh_run_knows_nothing_and_assumes_half_full() {
        Level level = Level.unknown(100);

        assertThat(level.known()).isFalse();
        assertThat(level.flowed(20).toFull()).isEqualTo(30, within(1e-9));
    }

    @Test
    void from_full_to_the_cut_off_the_capacity_is_measured() {
        Level full = Level.unknown(100).flowed(41).stepEnded(Ended.TAPER).stepBegun();

        Level empty = full.flowed(-97).stepEnded(Ended.CUT_OFF);

        assertThat(empty.measured()).isTrue();
        assertThat(empty.capacityAmpHours()).isEqualTo(97, within(1e-9));
        assertThat(empty.share()).isZero();
        assertThat(empty.flowed(38.8).share()).isEqualTo(0.4, within(1e-9));
    }

    @Test
    void a_discharge_that_did_not_begin_full_measures_no_capacity() {
        Level empty = Level.unknown(100).flowed(-60).stepEnded(Ended.CUT_OFF);

        assertThat(empty.known()).isTrue();
        assertThat(empty.measured()).isFalse();
        assertThat(empty.toFull()).isEqualTo(100, within(1e-9));
    }
}
