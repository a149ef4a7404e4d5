package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintStream;
import org.junit.jupiter.api.Test;

class BarTest {
    private static final long SECOND = 1_000_000_000L;
    private final Bar bar = new Bar(new PrintStream(PrintStream.nullOutputStream()), 30, 5 * SECOND);

    @Test
    void a_third_of_the_night_in_ten_seconds_leaves_about_twenty() {
        assertThat(bar.line(10, "step 3 of 9: discharge", 15 * SECOND)).startsWith("  ========................ 10.00 h")
                .contains("step 3 of 9: discharge, about 20 s left");
    }

    @Test
    void a_night_that_takes_longer_than_thought_never_says_that_it_is_over() {
        assertThat(bar.line(40, "step 9 of 9: park", 60 * SECOND)).contains("=======.").contains("about 1 s left");
    }

    @Test
    void every_line_covers_the_one_before() {
        assertThat(bar.line(0, "", 5 * SECOND)).hasSameSizeAs(bar.line(29, "x".repeat(300), 50 * SECOND));
    }
}
