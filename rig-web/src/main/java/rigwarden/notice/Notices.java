package rigwarden.notice;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import rigwarden.live.Snapshot;
import rigwarden.live.Watched;

/**
 * Notices of one run. A thread of its own reads the newest snapshot a few times a second, as a viewer of the page does, so
 * the control thread knows nothing of it; what is to be told goes to each way's courier.
 */
public final class Notices implements AutoCloseable {
    private static final long EVERY_NANOS = TimeUnit.MILLISECONDS.toNanos(250);
    private static final long LONGEST_END_NANOS = TimeUnit.SECONDS.toNanos(5);
    private static final long LAST_LOOK_MILLIS = 1000;

    private final NoticePlan plan;
    private final InstantSource clock;
    private final List<Courier> couriers;
    private final Thread thread = Thread.ofPlatform().daemon().name("notices").unstarted(this::run);
    private volatile Optional<Watched> run = Optional.empty();
    private volatile Optional<Lookout> lookout = Optional.empty();
    private volatile Optional<String> trouble = Optional.empty();
    private volatile boolean ending;

    /**
     * Opens every way; {@link #watch} says what is told of.
     *
     * @param terminal told what became of notices that did not arrive at once
     */
    public Notices(NoticePlan plan, InstantSource clock, Consumer<String> terminal) {
        this.plan = plan;
        this.clock = clock;
        couriers = plan.routes().stream().map(r -> new Courier(r, clock, terminal).start()).toList();
    }

    /** Begins to tell of a run. Once only. */
    public void watch(Watched watched) {
        run = Optional.of(watched);
        lookout = Optional.of(new Lookout(watched, clock, TimeUnit.MINUTES.toNanos(plan.checkInMinutes()),
                TimeUnit.HOURS.toNanos(plan.repeatHours())));
        thread.start();
    }

    private void run() {
        while (!ending) {
            look();
            LockSupport.parkNanos(EVERY_NANOS);
        }
        look();
    }

    /** A defect in here is said; it ends neither the notices nor the run. */
    private void look() {
        try {
            Watched watched = run.orElseThrow();
            watched.live().now().ifPresent(now ->
                    lookout.orElseThrow().look(now, watched.live().ageSeconds(), System.nanoTime()).forEach(this::tell));
        } catch (RuntimeException e) {
            trouble = Optional.of("a defect of the notices: " + e);
        }
    }

    /** A run that an earlier process left behind. */
    public void interrupted(int number, String words) {
        tell(new Notice(UUID.randomUUID(), What.INTERRUPTED, "Rigwarden was cut off", words
                + " Everything was off when Rigwarden began again; nothing goes on by itself.", number, false,
                plan.checkInMinutes(), clock.instant()));
    }

    private void tell(Notice notice) {
        couriers.forEach(courier -> courier.offer(notice));
    }

    /** How each way stands; what a person should know comes first. Any thread. */
    public List<String> standing() {
        List<String> lines = new ArrayList<>();
        trouble.ifPresent(lines::add);
        couriers.stream().map(Courier::standing).filter(Standing::troubled).map(Standing::words).forEach(lines::add);
        return List.copyOf(lines);
    }

    /** Tells what is left to tell and ends: what cannot be delivered within some seconds is said and lost. */
    @Override
    public void close() {
        ending = true;
        LockSupport.unpark(thread);
        try {
            if (thread.getState() != Thread.State.NEW) {
                thread.join(LAST_LOOK_MILLIS);
            }
        } catch (InterruptedException _) {
            Thread.currentThread().interrupt();
        }
        Optional<Snapshot> now = run.flatMap(r -> r.live().now());
        now.flatMap(s -> lookout.orElseThrow().last(s)).ifPresent(this::tell);
        couriers.forEach(Courier::finish);
        long until = System.nanoTime() + LONGEST_END_NANOS;
        couriers.forEach(courier -> courier.close(until - System.nanoTime()));
    }
}
