package rigwarden.page;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import rigwarden.joint.JointOhms;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;

/** The logbook as the page may use it: it reads, and keeps what a hand meter found. One caller at a time. */
public final class Shelf {
    private final Logbook book;

    public Shelf(Logbook book) {
        this.book = book;
    }

    /** All runs, newest first. */
    synchronized List<LedgerRun> runs() {
        return book.runs().reversed();
    }

    synchronized Optional<LedgerRun> run(int number) {
        return book.runs().stream().filter(r -> r.number() == number).findFirst();
    }

    /** Keeps a joint of a run. */
    synchronized void joint(int number, JointOhms joint) {
        book.joint(number, joint, LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString());
    }

    Path file(int number) {
        return book.file(number);
    }

    /** What is shared with a writer of the ledger: it takes its turn here. */
    public synchronized void inTurn(Runnable work) {
        work.run();
    }
}
