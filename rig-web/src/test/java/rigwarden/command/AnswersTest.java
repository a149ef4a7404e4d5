package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.command.Answers.Said;

/** What a typed line means in a proof. */
class AnswersTest {
    private final Answers answers = new Answers();

    @ParameterizedTest
    @CsvSource({"'',YES", "' ',YES", "done,YES", " Yes ,YES", "no,NO", "N,NO", "skip,NO", "s,NO", "stop,STOP", "STOP,STOP", "wait,UNCLEAR", "what?,UNCLEAR", "y,UNCLEAR", "ok,UNCLEAR",
        "not yet,UNCLEAR", "done?,UNCLEAR"})
    void only_an_empty_line_done_or_yes_is_a_yes(String line, Said means) {
        answers.heard(line);

        assertThat(answers.take()).isEqualTo(means);
        assertThat(answers.take()).isEqualTo(Said.NOTHING);
    }

    @Test
    void of_lines_that_come_within_one_scan_the_most_cautious_counts() {
        answers.heard("stop");
        answers.heard("");
        assertThat(answers.take()).isEqualTo(Said.STOP);

        answers.heard("");
        answers.heard("wait");
        answers.heard("");
        assertThat(answers.take()).isEqualTo(Said.UNCLEAR);
    }

    @Test
    void what_is_said_on_the_page_counts_at_rest_and_never_where_the_rig_is_energised_next() {
        answers.heardOnPage(true);

        assertThat(answers.take()).isEqualTo(Said.NOTHING);
        assertThat(answers.takeAtRest()).isEqualTo(Said.YES);
        assertThat(answers.takeAtRest()).isEqualTo(Said.NOTHING);
    }
}
