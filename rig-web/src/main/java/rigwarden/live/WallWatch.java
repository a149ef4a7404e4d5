package rigwarden.live;

import java.time.LocalDateTime;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.function.Supplier;
import rigwarden.loop.Clock;

/** Looks at the clock on the wall beside a run, every second, on a thread of its own. Nothing that it finds reaches the control thread. */
public final class WallWatch implements AutoCloseable {
    private static final long NAP_NANOS = 1_000_000_000L;

    private final Clock clock;
    private final Supplier<LocalDateTime> wall;
    private final Consumer<WallSteps.Step> set;
    private final WallSteps steps = new WallSteps();
    private final Thread thread;
    private volatile boolean ending;

    private WallWatch(Clock clock, Supplier<LocalDateTime> wall, Consumer<WallSteps.Step> set) {
        this.clock = clock;
        this.wall = wall;
        this.set = set;
        steps.look(clock.nanos(), wall.get());
        thread = Thread.ofPlatform().daemon().name("wall clock").unstarted(this::run);
    }

    /**
     * Begins to look.
     *
     * @param clock the run's
     * @param wall local time
     * @param set told where the clock on the wall was set, on this watch's own thread
     */
    public static WallWatch start(Clock clock, Supplier<LocalDateTime> wall, Consumer<WallSteps.Step> set) {
        WallWatch watch = new WallWatch(clock, wall, set);
        watch.thread.start();
        return watch;
    }

    private void run() {
        while (!ending) {
            LockSupport.parkNanos(NAP_NANOS);
            steps.look(clock.nanos(), wall.get()).ifPresent(set);
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
