package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;

/** The runs that a test left in a logbook, put through the core once more by the command that a person would use. */
public final class Replays {
    private Replays() {}

    /** That each of them gives the orders that are stored with it; how many they are. */
    public static int all(Path logbook) {
        List<Integer> numbers;
        try (Logbook book = Logbook.open(logbook, "replay")) {
            numbers = book.runs().stream().map(LedgerRun::number).toList();
        }
        for (int number : numbers) {
            Spoken said = Spoken.of("runs", String.valueOf(number), "--replay", "--logbook", logbook.toString());
            assertThat(said.out() + said.err()).contains("Run " + number + " replays: every scan");
        }
        return numbers.size();
    }
}
