package rigwarden.command;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import rigwarden.live.Watched;
import rigwarden.logbook.Logbook;
import rigwarden.notice.NoticePlan;
import rigwarden.notice.Notices;

/** Notices, if anybody wants some. */
final class Telling implements AutoCloseable {
    private final Optional<Notices> notices;

    Telling(Optional<NoticePlan> plan) {
        plan.ifPresent(p -> p.lines().forEach(line -> System.out.println("Notices go by " + line)));
        notices = plan.map(p -> new Notices(p, InstantSource.system(), System.out::println));
    }

    boolean wanted() {
        return notices.isPresent();
    }

    /** Tells of runs that an earlier process left behind. */
    void interrupted(Logbook book) {
        notices.ifPresent(n -> book.interrupted().forEach(i -> n.interrupted(i.number(), i.words())));
    }

    void watch(Watched run) {
        notices.ifPresent(n -> n.watch(run));
    }

    /** What did not arrive, for the page. */
    List<String> undelivered() {
        return notices.map(Notices::standing).orElse(List.of());
    }

    @Override
    public void close() {
        notices.ifPresent(Notices::close);
    }
}
