package rigwarden.command;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import rigwarden.logbook.Logbook;

/** {@code rigwarden serve}: the page without a run. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = "Serve the page without a run: what was run before, and its exports.")
final class ServeCommand implements Callable<Integer> {
    @Mixin
    private PageOptions place = new PageOptions();

    @Mixin
    private NoticeOption notices = new NoticeOption();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        try (SignalStop signal = new SignalStop()) {
            return signal.done(served(signal, now));
        }
    }

    private int served(SignalStop signal, String now) {
        try (Logbook book = Logbook.open(logbook.folder(), now);
                Telling telling = new Telling(notices.namedOrBeside(logbook.folder()));
                Showing showing = Showing.of(book, logbook.folder(), Optional.of(place))) {
            book.said().forEach(System.out::println);
            telling.interrupted(book);
            showing.where().ifPresent(System.out::println);
            signal.ended(Exits.DONE);
            showing.hold(signal);
            return Exits.DONE;
        }
    }
}
