package rigwarden.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import rigwarden.live.Watched;
import rigwarden.logbook.Logbook;
import rigwarden.page.AtRig;
import rigwarden.page.Shelf;
import rigwarden.page.Site;

/** The page, if one is wanted, and the run that it shows. */
final class Showing implements AutoCloseable {
    private static final long NAP_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

    private final Optional<Site> site;
    private final Shelf shelf;
    private final Optional<String> where;
    private volatile Optional<Watched> run = Optional.empty();
    private volatile Optional<AtRig.Asked> asked = Optional.empty();

    private Showing(Logbook book, Path folder, Optional<PageOptions> options) {
        shelf = new Shelf(book);
        site = options.map(o -> o.serve(() -> run, shelf, folder, AtRig.of(() -> asked)));
        where = site.map(s -> "The page: http://" + options.orElseThrow().address() + ":" + s.port()
                + "/ (STOP has port " + s.stopPort() + " to itself)");
    }

    /** Serves the page where there are options for it. */
    static Showing of(Logbook book, Path folder, Optional<PageOptions> options) {
        return new Showing(book, folder, options);
    }

    /** Where a person finds the page. */
    Optional<String> where() {
        return where;
    }

    boolean wanted() {
        return site.isPresent();
    }

    void show(Watched watched) {
        run = Optional.of(watched);
    }

    /** What a person at the rig is told now, or asked for at the terminal only; empty for nothing. */
    void say(String words) {
        asked = words.isEmpty() ? Optional.empty() : Optional.of(new AtRig.Asked(words, Optional.empty()));
    }

    /** What a person at the rig is asked for now; the page may answer it. */
    void ask(String words, AtRig.Ear answer) {
        asked = Optional.of(new AtRig.Asked(words, Optional.of(answer)));
    }

    /** Work on the ledger while the page may read it. */
    void inTurn(Runnable work) {
        shelf.inTurn(work);
    }

    /** Keeps the page until somebody ends the process. */
    void hold(SignalStop signal) {
        if (site.isEmpty()) {
            return;
        }
        System.out.println("The page stays until you end this with Ctrl-C.");
        System.out.flush();
        while (!signal.requested()) {
            LockSupport.parkNanos(NAP_NANOS);
        }
    }

    @Override
    public void close() {
        site.ifPresent(Site::close);
    }
}
