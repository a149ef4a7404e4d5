package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.paper.CautionWords;

/** What a person confirms once for each rig file before anything real is switched on; the ledger keeps it. */
final class Cautions {
    private static final String ANSWER = "understood";

    private final BufferedReader person;
    private final PrintStream terminal;

    Cautions(BufferedReader person, PrintStream terminal) {
        this.person = person;
        this.terminal = terminal;
    }

    /** Asks, unless these words were confirmed for this very rig file before. */
    void confirm(Logbook book, Inputs inputs, String now) throws IOException {
        String hash = RunAbout.hashOf(inputs.rigText());
        String words = String.join("\n", words());
        if (book.cautioned(hash, words)) {
            return;
        }
        words().forEach(terminal::println);
        terminal.print("Type \"" + ANSWER + "\" to confirm this for " + inputs.rig().name() + ", as its file is now: ");
        terminal.flush();
        String said = person.readLine();
        if (said == null || !said.strip().equalsIgnoreCase(ANSWER)) {
            throw new Refused("Not confirmed; nothing was switched on.");
        }
        book.caution(hash, inputs.rig().name(), now, words);
    }

    private static List<String> words() {
        List<String> words = new ArrayList<>(CautionWords.all());
        words.add("The rig is wired as `rigwarden wiring` draws it from this very file.");
        words.add("`rigwarden prove` shows what it can see from here; what hangs on wires that it cannot see is yours to have looked at.");
        return words;
    }
}
