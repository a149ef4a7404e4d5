package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PackDrawingTest {
    private static final Pattern BAR =
            Pattern.compile("class=\"bar\" x1=\"(\\d+)\" y1=\"(\\d+)\" x2=\"(\\d+)\" y2=\"(\\d+)\"");
    private static final Pattern POLE = Pattern.compile("class=\"pole\" x=\"(\\d+)\" y=\"(\\d+)\">([+−])");

    private static String drawn(int cells) {
        return PackDrawing.draw(cells, List.of(), _ -> false, View.NOTHING);
    }

    private static String poleAt(String svg, String x, String y) {
        return POLE.matcher(svg).results()
                .filter(m -> m.group(1).equals(x) && Math.abs(Integer.parseInt(m.group(2)) - Integer.parseInt(y)) < 6)
                .map(m -> m.group(3))
                .findFirst()
                .orElse("no stud");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4, 7, 8, 9, 12, 15, 16})
    void series_wiring_takes_one_bar_less_than_cells_each_short_and_from_plus_to_minus(int cells) {
        String svg = drawn(cells);
        List<MatchResult> bars = BAR.matcher(svg).results().toList();

        assertThat(bars).hasSize(cells - 1);
        for (MatchResult bar : bars) {
            assertThat(poleAt(svg, bar.group(1), bar.group(2))).isEqualTo("+");
            assertThat(poleAt(svg, bar.group(3), bar.group(4))).isEqualTo("−");
            double length = Math.hypot(Integer.parseInt(bar.group(1)) - Integer.parseInt(bar.group(3)),
                    Integer.parseInt(bar.group(2)) - Integer.parseInt(bar.group(4)));
            assertThat(length).isLessThan(100);
        }
    }

    @Test
    void no_row_is_longer_than_eight_cells() {
        long columns = Pattern.compile("class=\"cell\" x=\"(\\d+)\"").matcher(drawn(16)).results()
                .map(m -> m.group(1)).distinct().count();

        assertThat(columns).isEqualTo(8);
    }
}
