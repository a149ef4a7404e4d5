package rigwarden.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.Refusal;

/** What a person writes about a reference meter. */
class MeterFileTest {
    private static final String SIX_VOLTS = """
            name = "bench meter"
            percent = 0.015
            counts = 3
            digit = 0.0001
            range_percent = 0.005
            range = 6
            calibrated = "2026-03-01"
            holds_days = 365
            """;

    private static List<String> refused(String text) {
        return switch (MeterFile.read("meter.toml", text)) {
            case Read.Sound<MeterStatement> _ -> List.of();
            case Read.Refused<MeterStatement> refused -> refused.refusals().stream().map(Refusal::print).toList();
        };
    }

    @Test
    void a_meter_states_percent_of_its_reading_counts_and_percent_of_its_range() {
        MeterStatement meter = ((Read.Sound<MeterStatement>) MeterFile.read("meter.toml", SIX_VOLTS)).value();

        assertThat(meter.limits(3.6)).isEqualTo(3.6 * 0.00015 + 0.0003 + 0.0003, within(1e-12));
        assertThat(meter.holdsUntil()).hasToString("2027-03-01");
    }

    @Test
    void each_line_but_the_range_percent_is_missed() {
        for (String line : SIX_VOLTS.lines().filter(line -> !line.startsWith("range_percent")).toList()) {
            assertThat(refused(SIX_VOLTS.replace(line + "\n", ""))).as(line).isNotEmpty();
        }
        assertThat(refused(SIX_VOLTS.replace("range_percent = 0.005\n", ""))).isEmpty();
        assertThat(refused(SIX_VOLTS.replace("2026-03-01", "March"))).singleElement().asString().contains("a day, as 2026-03-01");
        assertThat(refused(SIX_VOLTS.replace("digit = 0.0001", "digit = 0"))).isNotEmpty();
    }

    @Test
    void points_can_be_read_back_from_a_file() {
        List<Point> points = ((Read.Sound<List<Point>>) MeterFile.points("p", """
                [[point]]
                reads = 5.01
                scatter = 0.003
                scans = 50
                shown = 5.0
                """)).value();

        assertThat(points).containsExactly(new Point(5.01, 0.003, 50, 5.0));
        assertThat(MeterFile.points("p", "[[point]]\nreads = 1\n")).isInstanceOf(Read.Refused.class);
    }
}
