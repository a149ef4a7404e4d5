package rigwarden.notice;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;

/**
 * Carries notices on one way, on a thread of its own: the first that waits is tried until it is taken, with growing waits
 * between. Who hands one over never waits.
 */
final class Courier {
    static final long FIRST_WAIT_NANOS = TimeUnit.SECONDS.toNanos(5);
    static final long LONGEST_WAIT_NANOS = TimeUnit.MINUTES.toNanos(10);
    /** Older news are no news; the run file has them. */
    static final Duration LASTS = Duration.ofHours(24);
    private static final long IDLE_NANOS = TimeUnit.SECONDS.toNanos(1);

    private final Route route;
    private final InstantSource clock;
    private final Consumer<String> terminal;
    private final Outbox outbox = new Outbox();
    private final Thread thread;
    private volatile int failures;
    private volatile String why = "";
    private volatile Optional<Instant> delivered = Optional.empty();
    private volatile boolean ending;
    /** A trip has come, for which no wait is too short. */
    private volatile boolean roused;

    /**
     * A courier without work; {@link #start} gives it its thread.
     *
     * @param terminal told when a way begins to fail, and when it works again
     */
    Courier(Route route, InstantSource clock, Consumer<String> terminal) {
        this.route = route;
        this.clock = clock;
        this.terminal = terminal;
        thread = Thread.ofPlatform().daemon().name("notices by " + route.name()).unstarted(this::run);
    }

    Courier start() {
        thread.start();
        return this;
    }

    /** Takes a notice if it goes this way. Any thread; never waits. */
    void offer(Notice notice) {
        if (route.takes(notice.what())) {
            outbox.put(notice);
            if (notice.what() == What.TRIPPED) {
                roused = true;
            }
            LockSupport.unpark(thread);
        }
    }

    private void run() {
        while (!(ending && outbox.first().isEmpty())) {
            long wait = attempt();
            if (ending && wait > 0) {
                return;
            }
            if (wait > 0) {
                rest(wait);
            }
        }
    }

    /** A notice that comes meanwhile does not shorten the wait after a failure, unless it tells of a trip. */
    private void rest(long nanos) {
        boolean afterFailure = failures > 0;
        long until = System.nanoTime() + nanos;
        for (long left = nanos; left > 0 && !ending; left = until - System.nanoTime()) {
            LockSupport.parkNanos(left);
            if (roused || !afterFailure && outbox.size() > 0) {
                roused = false;
                return;
            }
        }
    }

    /** Tries the first that waits, once; returns how long to wait before the next try, ns. Its own thread only, or a test. */
    long attempt() {
        Optional<Notice> first = outbox.first();
        if (first.isEmpty()) {
            return IDLE_NANOS;
        }
        Notice notice = first.orElseThrow();
        if (Duration.between(notice.at(), clock.instant()).compareTo(LASTS) > 0) {
            outbox.giveUp(notice);
            terminal.accept("NOTICE given up after a day by " + route.name() + ": " + notice.title());
            return 0;
        }
        return switch (send(notice)) {
            case Delivery.Delivered _ -> taken(notice);
            case Delivery.Failed failed -> failed(notice, failed);
        };
    }

    private Delivery send(Notice notice) {
        try {
            return route.send(notice);
        } catch (RuntimeException e) {
            return new Delivery.Failed("a defect of ours: " + e, true);
        }
    }

    private long taken(Notice notice) {
        outbox.sent(notice);
        if (failures > 0) {
            terminal.accept("Notices arrive again by " + route.name() + ".");
        }
        failures = 0;
        why = "";
        delivered = Optional.of(clock.instant());
        return 0;
    }

    private long failed(Notice notice, Delivery.Failed failed) {
        why = failed.words();
        int before = failures;
        failures = before + 1;
        if (before == 0) {
            terminal.accept("NOTICE NOT DELIVERED by " + route.name() + ": " + notice.title() + ": " + why
                    + ". It is tried again with growing waits.");
        }
        if (failed.refused()) {
            outbox.back(notice);
        }
        return Math.min(LONGEST_WAIT_NANOS, FIRST_WAIT_NANOS << Math.min(before, 7));
    }

    Standing standing() {
        return new Standing(route.name(), delivered, failures, why, outbox.size(), outbox.dropped());
    }

    /** Begins the end: each notice that waits is tried once more, up to the first that fails. */
    void finish() {
        ending = true;
        LockSupport.unpark(thread);
    }

    /** Waits for that end, not longer than this, and lets go of the way; what is still not delivered is said. */
    void close(long atMostNanos) {
        finish();
        try {
            if (thread.getState() != Thread.State.NEW) {
                thread.join(Duration.ofNanos(Math.max(1, atMostNanos)));
            }
        } catch (InterruptedException _) {
            Thread.currentThread().interrupt();
        }
        thread.interrupt();
        route.close();
        if (outbox.size() > 0) {
            terminal.accept(outbox.size() + " not delivered by " + route.name() + (why.isEmpty() ? "." : ": " + why + "."));
        }
    }
}
