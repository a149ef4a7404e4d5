package rigwarden.command;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;

/** {@code rigwarden runs}: the runs of a logbook. */
@Command(name = "runs", mixinStandardHelpOptions = true, description = "List the runs of a logbook.")
final class RunsCommand implements Callable<Integer> {
    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        try (Logbook book = Logbook.open(logbook.folder(), LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString())) {
            book.said().forEach(System.out::println);
            if (book.runs().isEmpty()) {
                System.out.println("No runs in " + logbook.folder() + ".");
            }
            for (LedgerRun run : book.runs()) {
                System.out.printf("%04d  %s  %-11s  %s · %s  %s%n", run.number(), run.started(), run.outcome().word(),
                        run.rig(), run.programme(), run.words());
            }
        }
        return Exits.DONE;
    }
}
