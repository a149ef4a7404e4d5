package rigwarden.loop;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PacerTest {
    private static final long SCAN = 100_000_000L;

    /** A clock that a test moves; a sleep ends when it should, or so much later. */
    private static final class HandClock implements Clock {
        long nanos = 7_000_000_000L;
        long oversleepsNanos;

        @Override
        public long nanos() {
            return nanos;
        }

        @Override
        public void sleepUntil(long until) {
            nanos = Math.max(nanos, until + oversleepsNanos);
        }
    }

    private final HandClock clock = new HandClock();
    private final Pacer pacer = Pacer.ofScan(clock, SCAN);

    @Test
    void slots_lie_a_scan_apart_whatever_the_work_between_them_takes() {
        pacer.await();
        long began = clock.nanos;

        clock.nanos += 30_000_000L;
        pacer.await();
        clock.nanos += 90_000_000L;
        pacer.await();

        assertThat(clock.nanos - began).isEqualTo(2 * SCAN);
        assertThat(pacer.overruns()).isZero();
    }

    @Test
    void a_late_wake_up_is_told_and_does_not_push_the_slots_that_follow() {
        pacer.await();
        long began = clock.nanos;

        clock.oversleepsNanos = 4_000_000L;
        long late = pacer.await();
        clock.oversleepsNanos = 0;
        pacer.await();

        assertThat(late).isEqualTo(4_000_000L);
        assertThat(pacer.worstSeconds()).isEqualTo(0.004);
        assertThat(clock.nanos - began).isEqualTo(2 * SCAN);
    }

    @Test
    void work_that_takes_a_little_too_long_is_an_overrun_and_costs_no_slot() {
        pacer.await();
        long began = clock.nanos;

        clock.nanos += 130_000_000L;
        long late = pacer.await();
        pacer.await();

        assertThat(late).isEqualTo(30_000_000L);
        assertThat(pacer.overruns()).isEqualTo(1);
        assertThat(pacer.skipped()).isZero();
        assertThat(clock.nanos - began).isEqualTo(2 * SCAN);
    }

    @Test
    void slots_that_are_missed_are_skipped_and_counted_and_never_run_in_a_bunch_and_the_next_is_late_by_all_of_them() {
        pacer.await();
        long began = clock.nanos;

        clock.nanos += 450_000_000L;
        long late = pacer.await();
        long resumed = clock.nanos - began;
        pacer.await();

        assertThat(late).isEqualTo(4 * SCAN);
        assertThat(pacer.lateSeconds()).as("the slot after it is in time").isZero();
        assertThat(resumed).isEqualTo(5 * SCAN);
        assertThat(pacer.skipped()).isEqualTo(4);
        assertThat(clock.nanos - began).isEqualTo(6 * SCAN);
    }

    @Test
    void the_real_clock_never_wakes_before_its_deadline() {
        RealClock real = new RealClock();
        long deadline = real.nanos() + 2_000_000L;

        real.sleepUntil(deadline);

        assertThat(real.nanos()).isGreaterThanOrEqualTo(deadline);
    }
}
