package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

class TrendsTest {
    private final Trends trends = new Trends();

    private Scan scan(long tenths, double celsius) {
        Scan scan = new Scan(tenths + 1, tenths * 100_000_000L, List.of(new Reading.Valid(0, celsius, 0)));
        trends.take(scan);
        return scan;
    }

    @Test
    void a_stud_that_warms_two_kelvin_a_minute_says_so_once_a_minute_has_passed() {
        Scan last = scan(0, 20);
        for (long tenths = 1; tenths < 590; tenths++) {
            last = scan(tenths, 20 + tenths / 300.0);
        }
        assertThat(trends.over(last).getFirst()).isEmpty();

        for (long tenths = 590; tenths < 1200; tenths++) {
            last = scan(tenths, 20 + tenths / 300.0);
        }

        assertThat(trends.over(last).getFirst().orElseThrow()).isEqualTo(2, within(0.04));
    }
}
