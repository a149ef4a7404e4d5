package rigwarden.live;

import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import java.util.function.Supplier;
import rigwarden.loop.Clock;

/** Looks at the clock on the wall beside a run, every second, on a thread of its own. Nothing that it finds reaches the control thread. */
public final class WallWatch implements AutoCloseable {
    private static final long NAP_NANOS = 1_000_000_000L;

    private final Clock clock;
    private final Supplier<OffsetDateTime> wall;
    private final Predicate<WallSteps.Step> set;
    private final WallSteps steps = new WallSteps();
    private final Deque<WallSteps.Step> untold = new ArrayDeque<>();
    private final Thread thread;
    private volatile boolean ending;

    private WallWatch(Clock clock, Supplier<OffsetDateTime> wall, Predicate<WallSteps.Step> set) {
        this.clock = clock;
        this.wall = wall;
        this.set = set;
        look();
        thread = Thread.ofPlatform().daemon().name("wall clock").unstarted(this::run);
    }

    /**
     * Begins to look.
     *
     * @param clock the run's
     * @param wall time on the wall, with the offset that is in force
     * @param set told where the clock on the wall was set, on this watch's own thread; told again a second later where it takes nothing down
     */
    public static WallWatch start(Clock clock, Supplier<OffsetDateTime> wall, Predicate<WallSteps.Step> set) {
        WallWatch watch = new WallWatch(clock, wall, set);
        watch.thread.start();
        return watch;
    }

    private void look() {
        long before = clock.nanos();
        OffsetDateTime shows = wall.get();
        steps.look(before, shows, clock.nanos()).ifPresent(untold::add);
    }

    private void run() {
        while (!ending) {
            LockSupport.parkNanos(NAP_NANOS);
            look();
            while (!untold.isEmpty() && set.test(untold.peek())) {
                untold.remove();
            }
        }
    }

    /** Looks once more, and ends. */
    @Override
    public void close() {
        ending = true;
        LockSupport.unpark(thread);
        try {
            thread.join(NAP_NANOS / 1_000_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
