package rigwarden.command;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
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

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws IOException {
        Path file = StoredRuns.file(logbook, run);
        RunFindings found = RunFindings.read(file).orElseThrow(() -> new Refused("The rig of run " + run
                + " is refused by this version of Rigwarden, so that nothing is found from it; `rigwarden export` still gives its readings."));
        if (json) {
            System.out.println(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(FindingsJson.of(run, found)));
        } else {
            FindingsText.of(run, found).forEach(System.out::println);
        }
        return Exits.DONE;
    }
}
