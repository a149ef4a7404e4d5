package rigwarden.command;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import rigwarden.page.Passphrase;

/** {@code rigwarden operator}: sets the passphrase with which a start or a clear may be asked for from the page. */
@Command(
        name = "operator",
        mixinStandardHelpOptions = true,
        description = "Set the operator's passphrase for starting and clearing from the page. STOP needs none.")
final class OperatorCommand implements Callable<Integer> {
    private static final int SHORTEST = 10;

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    @SuppressWarnings("SystemConsoleNull")
    public Integer call() throws IOException {
        Console console = System.console();
        char[] phrase = console != null && console.isTerminal() ? asked(console) : line();
        if (phrase.length < SHORTEST) {
            throw new Refused("A passphrase has at least " + SHORTEST + " characters; four words are easy to keep.");
        }
        Files.createDirectories(logbook.folder());
        Passphrase.set(logbook.folder(), phrase);
        Arrays.fill(phrase, ' ');
        System.out.println("The operator's passphrase is set for " + logbook.folder() + ". Earlier sign-ins hold until they expire.");
        return Exits.DONE;
    }

    private static char[] asked(Console console) {
        char[] once = console.readPassword("New passphrase (not shown): ");
        char[] again = console.readPassword("Once more: ");
        if (once == null || again == null || !Arrays.equals(once, again)) {
            throw new Refused("The two were not the same; nothing was changed.");
        }
        return once;
    }

    private static char[] line() throws IOException {
        String line = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
        if (line == null) {
            throw new Refused("No passphrase came in; type one on a terminal or pipe one line in.");
        }
        return line.toCharArray();
    }
}
