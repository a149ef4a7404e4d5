package rigwarden.page;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.Outcome;
import rigwarden.paper.Card;

/** Morning cards for the page. Each is made once, behind the page, one after the other; the last few are kept. */
final class MorningShelf implements AutoCloseable {
    private static final int KEPT = 16;

    /** A card, or why there is none. */
    sealed interface Kept {
        record Made(Card card) implements Kept {}

        record Making() implements Kept {}

        record None(String why) implements Kept {}
    }

    private final Map<Integer, Kept> kept = new LinkedHashMap<>();
    private final ThreadPoolExecutor maker;

    MorningShelf() {
        maker = new ThreadPoolExecutor(0, 1, 10, TimeUnit.SECONDS, new LinkedBlockingQueue<>(KEPT),
                work -> Thread.ofPlatform().daemon().name("morning cards").unstarted(work),
                new ThreadPoolExecutor.DiscardPolicy());
    }

    /** The card of a run that is over, as far as it is made. Never waits. */
    synchronized Kept of(LedgerRun run, Path file) {
        if (run.outcome() == Outcome.RUNNING) {
            return new Kept.None("");
        }
        Kept known = kept.get(run.number());
        if (known != null) {
            return known;
        }
        if (maker.getQueue().remainingCapacity() > 0 && !maker.isShutdown()) {
            keep(run.number(), new Kept.Making());
            maker.execute(() -> make(run, file));
        }
        return new Kept.Making();
    }

    private void make(LedgerRun run, Path file) {
        Kept made;
        try {
            Optional<Card> card = Mornings.card(run, file);
            made = card.<Kept>map(Kept.Made::new).orElse(new Kept.None("No card: it is a log from elsewhere, or this version refuses its rig or programme."));
        } catch (LogbookException e) {
            made = new Kept.None(String.valueOf(e.getMessage()));
        } catch (RuntimeException _) {
            made = new Kept.None("The card could not be made: a defect of ours.");
        }
        keep(run.number(), made);
    }

    private synchronized void keep(int number, Kept what) {
        kept.remove(number);
        kept.put(number, what);
        if (kept.size() > KEPT) {
            kept.keySet().stream().findFirst().ifPresent(kept::remove);
        }
    }

    @Override
    public void close() {
        maker.shutdownNow();
    }
}
