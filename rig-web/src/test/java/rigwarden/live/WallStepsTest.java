package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import rigwarden.loop.RealClock;

/** Where the clock on the wall was set beside a run. */
class WallStepsTest {
    private static final OffsetDateTime EVENING = OffsetDateTime.parse("2026-11-02T23:00:00+01:00");
    private static final long SECOND = 1_000_000_000L;

    @Test
    void a_clock_that_goes_as_time_does_or_is_corrected_bit_by_bit_was_not_set() {
        WallSteps steps = new WallSteps();
        for (int i = 0; i < 3600; i++) {
            assertThat(look(steps, 7 + i * SECOND, EVENING.plusNanos(i * (SECOND + 500_000)))).isEmpty();
        }
    }

    @Test
    void where_summer_time_begins_or_ends_nobody_has_set_it() {
        WallSteps steps = new WallSteps();
        OffsetDateTime summer = OffsetDateTime.parse("2026-10-25T02:59:59+02:00");
        look(steps, 0, summer);

        assertThat(look(steps, SECOND, OffsetDateTime.parse("2026-10-25T02:00:00+01:00"))).isEmpty();
        assertThat(look(steps, 2 * SECOND, summer.plusSeconds(2))).isEmpty();
    }

    @Test
    void a_look_that_was_held_up_tells_nothing_and_the_next_one_all() {
        WallSteps steps = new WallSteps();
        look(steps, 0, EVENING);

        assertThat(steps.look(SECOND, EVENING.plusSeconds(4), 4 * SECOND)).isEmpty();
        assertThat(look(steps, 5 * SECOND, EVENING.plusSeconds(5))).isEmpty();
        assertThat(steps.look(6 * SECOND, EVENING.plusSeconds(69), 9 * SECOND)).isEmpty();
        assertThat(Math.round(look(steps, 10 * SECOND, EVENING.plusSeconds(70)).orElseThrow().seconds())).isEqualTo(60);
    }

    private static Optional<WallSteps.Step> look(WallSteps steps, long nanos, OffsetDateTime wall) {
        return steps.look(nanos, wall, nanos + 1000);
    }

    @Test
    void an_hour_forward_and_back_is_told_once_each_with_what_it_would_have_shown() {
        WallSteps steps = new WallSteps();
        look(steps, 0, EVENING);

        WallSteps.Step forward = look(steps, 2 * SECOND, EVENING.plusHours(1).plusSeconds(2)).orElseThrow();
        assertThat(forward.words()).isEqualTo("the clock on the wall was set from 2026-11-02T23:00:02 to 2026-11-03T00:00:02, by +3600 s");
        assertThat(look(steps, 3 * SECOND, EVENING.plusHours(1).plusSeconds(3))).isEmpty();
        assertThat(look(steps, 4 * SECOND, EVENING.plusSeconds(4)).orElseThrow().seconds()).isEqualTo(-3600);
    }

    @Test
    void what_was_not_taken_down_is_told_again() throws InterruptedException {
        RealClock clock = new RealClock();
        long began = clock.nanos();
        AtomicReference<OffsetDateTime> base = new AtomicReference<>(EVENING);
        AtomicInteger asked = new AtomicInteger();
        BlockingQueue<WallSteps.Step> told = new ArrayBlockingQueue<>(10);

        try (WallWatch _ = WallWatch.start(clock, () -> base.get().plusNanos(clock.nanos() - began),
                step -> asked.incrementAndGet() > 1 && told.offer(step))) {
            base.set(EVENING.plusHours(1));
            assertThat(told.poll(30, TimeUnit.SECONDS)).isNotNull().extracting(step -> Math.round(step.seconds())).isEqualTo(3600L);
        }
        assertThat(asked).hasValue(2);
    }

    @Test
    void the_watch_tells_it_within_seconds() throws InterruptedException {
        RealClock clock = new RealClock();
        long began = clock.nanos();
        AtomicReference<OffsetDateTime> base = new AtomicReference<>(EVENING);
        BlockingQueue<WallSteps.Step> told = new ArrayBlockingQueue<>(10);

        try (WallWatch _ = WallWatch.start(clock, () -> base.get().plusNanos(clock.nanos() - began), told::offer)) {
            base.set(EVENING.minusHours(1));
            assertThat(told.poll(30, TimeUnit.SECONDS)).isNotNull().extracting(step -> Math.round(step.seconds())).isEqualTo(-3600L);
        }
        assertThat(List.copyOf(told)).isEmpty();
    }
}
