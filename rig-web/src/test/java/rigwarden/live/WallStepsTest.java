package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import rigwarden.loop.RealClock;

/** Where the clock on the wall was set beside a run. */
class WallStepsTest {
    private static final LocalDateTime EVENING = LocalDateTime.parse("2026-11-02T23:00:00");
    private static final long SECOND = 1_000_000_000L;

    @Test
    void a_clock_that_goes_as_time_does_or_is_corrected_bit_by_bit_was_not_set() {
        WallSteps steps = new WallSteps();
        for (int i = 0; i < 3600; i++) {
            assertThat(steps.look(7 + i * SECOND, EVENING.plusNanos(i * (SECOND + 500_000)))).isEmpty();
        }
    }

    @Test
    void an_hour_forward_and_back_is_told_once_each_with_what_it_would_have_shown() {
        WallSteps steps = new WallSteps();
        steps.look(0, EVENING);

        WallSteps.Step forward = steps.look(2 * SECOND, EVENING.plusHours(1).plusSeconds(2)).orElseThrow();
        assertThat(forward.words()).isEqualTo("the clock on the wall was set from 2026-11-02T23:00:02 to 2026-11-03T00:00:02, by +3600 s");
        assertThat(steps.look(3 * SECOND, EVENING.plusHours(1).plusSeconds(3))).isEmpty();
        assertThat(steps.look(4 * SECOND, EVENING.plusSeconds(4)).orElseThrow().seconds()).isEqualTo(-3600);
    }

    @Test
    void the_watch_tells_it_within_seconds() throws InterruptedException {
        RealClock clock = new RealClock();
        long began = clock.nanos();
        AtomicReference<LocalDateTime> base = new AtomicReference<>(EVENING);
        BlockingQueue<WallSteps.Step> told = new ArrayBlockingQueue<>(10);

        try (WallWatch _ = WallWatch.start(clock, () -> base.get().plusNanos(clock.nanos() - began), told::add)) {
            base.set(EVENING.minusHours(1));
            assertThat(told.poll(30, TimeUnit.SECONDS)).isNotNull().extracting(step -> Math.round(step.seconds())).isEqualTo(-3600L);
        }
        assertThat(List.copyOf(told)).isEmpty();
    }
}
