package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.joint.Families;
import rigwarden.joint.JointOhms;
import rigwarden.live.Walk;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunReader;
import rigwarden.paper.JointPath;

/** {@code rigwarden walk}: leads a hand meter along the joints while a run goes on in another process; after it, says what was found. */
@Command(
        name = "walk",
        mixinStandardHelpOptions = true,
        description = {"While a step with current goes on: lead a hand meter from joint to joint, and keep micro-ohms.",
            "It talks to the page of the run's process. Without a page it says what was found in RUN."})
final class WalkCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run.")
    private int number;

    @Option(names = "--port", paramLabel = "N", description = "Port of the run's page on this machine (default: 8040).")
    private int port = 8040;

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        try (WalkedPage page = new WalkedPage(URI.create("http://127.0.0.1:" + port))) {
            if (page.there()) {
                if (page.run() != number) {
                    throw new Refused("The page on port " + port + (page.run() == 0 ? " shows no run" : " shows run " + page.run()) + ", not run "
                            + number + ". Name another page with --port, or walk the run that goes on.");
                }
                new WalkTalk(page, new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)), System.out).lead();
                return Exits.DONE;
            }
        } catch (IOException e) {
            throw new Refused("The page on port " + port + " answers no longer (" + e + "): its process has ended. What was kept is in the ledger.");
        }
        return told();
    }

    /** Nobody serves: the ledger tells. */
    private int told() {
        try (Logbook book = Logbook.open(logbook.folder(), LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString())) {
            LedgerRun run = book.runs().stream().filter(one -> one.number() == number).findFirst().orElseThrow(() ->
                    new Refused("There is no run " + number + " in " + logbook.folder() + ", and no page on port " + port + "."));
            List<JointOhms> found = named(book, run);
            if (found.isEmpty()) {
                System.out.println("No joint was walked in run " + number + ", and no run's page is on port " + port + ".");
            }
            Families.ranked(found).forEach(joint -> System.out.println("  " + joint.joint() + ": " + Walk.words(joint)));
            Families.outOfFamily(found).forEach(System.out::println);
            return Exits.DONE;
        }
    }

    private static List<JointOhms> named(Logbook book, LedgerRun run) {
        try (RunReader reader = RunReader.open(book.file(run.number()))) {
            List<JointPath.Joint> joints = JointPath.of(Inputs.stored(reader.about()).rig());
            List<JointOhms> named = new ArrayList<>();
            for (JointOhms one : book.joints(run.number())) {
                String family = joints.stream().filter(joint -> joint.name().equals(one.joint())).map(JointPath.Joint::family).findFirst().orElse("");
                named.add(new JointOhms(one.joint(), family, one.ohms(), one.expandedOhms()));
            }
            return named;
        }
    }
}
