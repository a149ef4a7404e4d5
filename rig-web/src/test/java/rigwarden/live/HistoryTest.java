package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

class HistoryTest {
    private static final long SCAN = 100_000_000L;
    private static final long ORIGIN = 77_000_000_000L;
    private static final Channel CELL =
            new Channel(0, "cell_01_v", Role.CELL_VOLTS, 1, SCAN, 1e-4, 0, 0, 0.001, 1, 4, 0);

    private final History history = new History(List.of(CELL));

    private void take(long number, double volts) {
        history.take(scan(number, new Reading.Valid(0, volts, ORIGIN + number * SCAN)));
    }

    private static Scan scan(long number, Reading reading) {
        return new Scan(number, ORIGIN + number * SCAN, List.of(reading));
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 240, 1000})
    void a_reading_of_one_scan_is_there_at_any_width_after_a_night_of_scans(int most) {
        for (long number = 0; number < 400_000; number++) {
            take(number, number == 123_457 ? 3.9 : number == 200_001 ? 2.1 : 3.3);
        }

        Trace trace = history.trace(most);

        assertThat(trace.seconds().length).isBetween(most / 3, most);
        assertThat(trace.lines().getFirst().high()).contains(3.9).contains(3.3);
        assertThat(trace.lines().getFirst().low()).contains(2.1).contains(3.3);
    }

    @Test
    void memory_is_bounded_whatever_the_length_and_the_buckets_cover_all_of_it() {
        for (long number = 0; number < 300_000; number += 7) {
            take(number, 3.3);
        }

        Trace trace = history.trace(History.BUCKETS);

        assertThat(trace.seconds().length).isBetween(History.BUCKETS / 2, History.BUCKETS);
        assertThat(trace.seconds()[trace.seconds().length - 1]).isBetween(29_900.0, 30_000.0);
    }

    @Test
    void a_span_without_a_valid_reading_is_a_hole_and_not_a_made_up_value() {
        take(0, 3.3);
        history.take(scan(1, new Reading.Failed(Failure.NO_ANSWER, ORIGIN + SCAN)));
        take(2, 3.4);

        Trace.Line line = history.trace(100).lines().getFirst();

        assertThat(line.low()).containsExactly(3.3, Double.NaN, 3.4);
    }
}
