package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;

/** The talk with a person who walks a hand meter along the joints. */
final class WalkTalk {
    private final WalkedPage page;
    private final BufferedReader person;
    private final PrintStream terminal;

    WalkTalk(WalkedPage page, BufferedReader person, PrintStream terminal) {
        this.page = page;
        this.person = person;
        this.terminal = terminal;
    }

    /** Until every joint has been visited, the person has had enough, or the run is over. */
    void lead() throws IOException {
        terminal.println("One tip on the stud or terminal itself, the other on the lug or bar, never on the nut. Insulated tips; one hand.");
        page.look();
        int run = page.run();
        while (true) {
            terminal.print(page.words());
            if (page.run() != run || page.joint() == 0) {
                return;
            }
            terminal.print("mV (an empty line: cannot be reached; \"end\"): ");
            terminal.flush();
            String typed = person.readLine();
            if (typed == null || typed.strip().equals("end")) {
                terminal.println("What was kept is in the ledger.");
                return;
            }
            if (typed.isBlank()) {
                page.pass(page.joint());
            } else {
                page.type(page.joint(), typed);
            }
        }
    }
}
