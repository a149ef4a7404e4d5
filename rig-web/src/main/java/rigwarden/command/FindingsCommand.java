package rigwarden.command;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.joint.JointOhms;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.LogbookException;
import rigwarden.paper.FindingsJson;
import rigwarden.paper.FindingsText;
import rigwarden.paper.RunFindings;

/** {@code rigwarden findings}: what a run says, how sure, and what it does not say. */
@Command(
        name = "findings",
        mixinStandardHelpOptions = true,
        description = "What a run found: the answers, how sure and why, and what would make them surer.")
final class FindingsCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run.")
    private int run;

    @Option(names = "--json", description = "For a program: every number unrounded, with its budget.")
    private boolean json;

    @Option(names = "--beside", paramLabel = "RUN", description = {"An earlier run of the same rig: whether its joints' rises, scaled by the",
        "square of the current, are those of this run."})
    private int beside;

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws IOException {
        Path file = file(run);
        RunFindings found = RunFindings.read(file, walked(), beside > 0 ? Optional.of(file(beside)) : Optional.empty())
                .orElseThrow(() -> new Refused("The rig of run " + run
                + " is refused by this version of Rigwarden, so that nothing is found from it; `rigwarden export` still gives its readings."));
        if (json) {
            System.out.println(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(FindingsJson.of(run, found)));
        } else {
            FindingsText.of(run, found).forEach(System.out::println);
        }
        return Exits.DONE;
    }

    private Path file(int number) {
        Path file = logbook.folder().resolve("runs").resolve(String.format(Locale.ROOT, "%04d.db", number));
        if (!Files.isReadable(file)) {
            throw new Refused("There is no run " + number + " in " + logbook.folder()
                    + "; `rigwarden runs` lists those that there are.");
        }
        return file;
    }

    /** What a hand meter found is in the ledger, which only one process may open: beside a run it is left alone, and that is said. */
    private List<JointOhms> walked() {
        try (Logbook book = Logbook.open(logbook.folder(), LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString())) {
            return book.joints(run);
        } catch (LogbookException e) {
            System.err.println("Without what a hand meter found on the joints: " + e.getMessage());
            return List.of();
        }
    }
}
