package rigwarden.command;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.page.Mornings;

/** {@code rigwarden runs}: the runs of a logbook. */
@Command(name = "runs", mixinStandardHelpOptions = true, description = "List the runs of a logbook; with RUN print the morning card of one.")
final class RunsCommand implements Callable<Integer> {
    @Parameters(index = "0", arity = "0..1", paramLabel = "RUN", description = "Number of a run.")
    private Optional<Integer> number = Optional.empty();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        try (Logbook book = Logbook.open(logbook.folder(), LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString())) {
            book.said().forEach(System.out::println);
            if (number.isPresent()) {
                return card(book, number.orElseThrow());
            }
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

    private int card(Logbook book, int wanted) {
        LedgerRun run = book.runs().stream().filter(r -> r.number() == wanted).findFirst().orElseThrow(() ->
                new Refused("There is no run " + wanted + " in " + logbook.folder() + "; `rigwarden runs` lists those that there are."));
        Mornings.card(run, book.file(wanted)).ifPresentOrElse(card -> card.lines().forEach(System.out::println), () ->
                System.out.println("Run " + wanted + " " + run.outcome().word() + ". Its rig or programme is refused by this version"
                        + " of Rigwarden, so that it makes no card; `rigwarden export` still gives its readings."));
        return Exits.DONE;
    }
}
