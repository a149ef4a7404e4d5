package rigwarden.command;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.logbook.Broken;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.page.Mornings;

/** {@code rigwarden runs}: the runs of a logbook. */
@Command(name = "runs", mixinStandardHelpOptions = true, description = "List the runs of a logbook; with RUN print the morning card of one.")
final class RunsCommand implements Callable<Integer> {
    @Parameters(index = "0", arity = "0..1", paramLabel = "RUN", description = "Number of a run.")
    private Optional<Integer> number = Optional.empty();

    @Option(names = "--replay", description = "With RUN: put it through the core once more, and say whether that gives the orders that are stored with it.")
    private boolean replay;

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        try (Logbook book = Logbook.open(logbook.folder(), LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString())) {
            book.said().forEach(System.out::println);
            if (number.isPresent()) {
                LedgerRun run = run(book, number.orElseThrow());
                return replay ? replayed(book, run) : card(book, run);
            }
            if (replay) {
                throw new Refused("--replay needs the number of a run; `rigwarden runs` without it lists those that there are.");
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

    private LedgerRun run(Logbook book, int wanted) {
        return book.runs().stream().filter(r -> r.number() == wanted).findFirst().orElseThrow(() ->
                new Refused("There is no run " + wanted + " in " + logbook.folder() + "; `rigwarden runs` lists those that there are."));
    }

    private int card(Logbook book, LedgerRun run) {
        try (RunReader reader = RunReader.open(book.file(run.number()))) {
            if (reader.about().imported().isPresent()) {
                System.out.printf("Run %04d is a log from elsewhere: %s.%nIt makes no card; `rigwarden findings %d` says what it found.%n", run.number(),
                        reader.about().imported().get(), run.number());
                return Exits.DONE;
            }
        }
        Seal.broken(run, book.file(run.number())).ifPresent(System.out::println);
        Mornings.card(run, book.file(run.number())).ifPresentOrElse(card -> card.lines().forEach(System.out::println), () ->
                System.out.println("Run " + run.number() + " " + run.outcome().word() + ". Its rig or programme is refused by this version"
                        + " of Rigwarden, so that it makes no card; `rigwarden export` still gives its readings."));
        return Exits.DONE;
    }

    private int replayed(Logbook book, LedgerRun run) {
        RunAbout about;
        try (RunReader reader = RunReader.open(book.file(run.number()))) {
            about = reader.about();
        }
        Inputs then = Inputs.stored(about);
        Optional<String> fault = Broken.read(run, book.runs(), book.file(run.number()), then.rig(), then.program()).fault();
        if (fault.isPresent()) {
            throw new Refused("Run " + run.number() + " does not replay: found " + fault.get()
                    + ". Its file was changed, or was made by another version of Rigwarden; it says "
                    + about.versions() + ", this is " + Version.all() + ".");
        }
        System.out.println("Run " + run.number() + " replays: every scan, put through the core once more, gives the orders that are stored with it.");
        return Exits.DONE;
    }
}
