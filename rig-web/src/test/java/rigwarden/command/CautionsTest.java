package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.paper.CautionWords;

/** The cautions before a rig's first run, asked on a terminal and kept in the ledger. */
class CautionsTest {
    private static final Path RIGS = Path.of("../hardware/rigs");

    private final ByteArrayOutputStream terminal = new ByteArrayOutputStream();

    @TempDir
    private Path folder;

    @Test
    void somebody_who_understood_is_not_asked_again_for_the_same_rig_file_and_is_for_a_changed_one() throws IOException {
        Inputs inputs = inputs("");

        ask("understood\n", inputs);
        String first = terminal.toString(StandardCharsets.UTF_8);
        terminal.reset();
        ask("", inputs);
        String again = terminal.toString(StandardCharsets.UTF_8);
        ask("Understood \n", inputs("# the fuse was changed\n"));

        assertThat(first).contains(CautionWords.all());
        assertThat(again).isEmpty();
        assertThat(terminal.toString(StandardCharsets.UTF_8)).contains(CautionWords.all());
    }

    @Test
    void whoever_says_anything_else_or_nothing_is_refused_and_asked_again_the_next_time() throws IOException {
        Inputs inputs = inputs("");

        assertThatThrownBy(() -> ask("yes\n", inputs)).isInstanceOf(Refused.class).hasMessageContaining("nothing was switched on");
        assertThatThrownBy(() -> ask("", inputs)).isInstanceOf(Refused.class);

        try (Logbook book = Logbook.open(folder, "look")) {
            assertThat(book.runs()).isEmpty();
        }
    }

    private void ask(String says, Inputs inputs) throws IOException {
        try (Logbook book = Logbook.open(folder, "now")) {
            new Cautions(new BufferedReader(new StringReader(says)), new PrintStream(terminal, true, StandardCharsets.UTF_8))
                    .confirm(book, inputs, "2026-01-01T20:00");
        }
    }

    private static Inputs inputs(String more) throws IOException {
        return Inputs.stored(new RunAbout(Files.readString(RIGS.resolve("one-cell.toml")) + more,
                Files.readString(RIGS.resolve("one-cell-night.toml")), Map.of(), "", 0, true, "", 0));
    }
}
