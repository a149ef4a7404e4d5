package rigwarden.command;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.logbook.Logbook;

/** {@code rigwarden abandon}: a run that was broken off is closed for good. */
@Command(
        name = "abandon",
        mixinStandardHelpOptions = true,
        description = "Close a run that a crash, a power cut or a trip broke off, for good: nobody is asked about it again.")
final class AbandonCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run.")
    private int number;

    @Option(names = "--because", required = true, paramLabel = "REASON", description = "Why, in your words.")
    private String because = "";

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        if (because.isBlank()) {
            throw new Refused("--because: say why, in a few words; they stay in the ledger.");
        }
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        try (Logbook book = Logbook.open(logbook.folder(), now)) {
            book.said().forEach(System.out::println);
            book.abandon(number, because.strip());
            System.out.printf("Run %04d is abandoned: %s%n", number, because.strip());
        }
        return Exits.DONE;
    }
}
