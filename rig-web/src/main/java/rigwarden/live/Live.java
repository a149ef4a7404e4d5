package rigwarden.live;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;
import rigwarden.warden.Warning;

/**
 * Watches a run: hands each record on to the logbook first, then lays it aside for its own thread, which keeps a history and
 * publishes a snapshot some ten times a second. The control thread pays one hand-over, without a lock; what this view cannot
 * keep up with it does not see, and counts.
 */
public final class Live implements Recorder, AutoCloseable {
    private static final int MOST_WAITING = 16_384;
    private static final int WARNINGS_KEPT = 5;
    private static final long NAP_NANOS = 80_000_000L;

    private record Taken(Scan scan, Orders orders, List<Event> events) {}

    private final Recorder next;
    private final ConcurrentLinkedQueue<Taken> waiting = new ConcurrentLinkedQueue<>();
    private final AtomicInteger count = new AtomicInteger();
    private final AtomicLong unseen = new AtomicLong();
    private final History history;
    private final Course course;
    private final Trends trends = new Trends();
    private final Margins margins;
    private final Deque<Warning> warnings = new ArrayDeque<>();
    private final Thread thread;
    private long originNanos;
    private boolean begun;
    private volatile boolean ending;
    private volatile Optional<String> trouble = Optional.empty();
    private volatile Optional<Snapshot> now = Optional.empty();
    private volatile long publishedNanos = System.nanoTime();

    /** A view of a run that nothing has happened in yet; {@link #start} gives it its thread. */
    public Live(Rig rig, Program program, Recorder next) {
        this.next = next;
        history = new History(rig.channels());
        course = new Course(rig, program);
        margins = new Margins(rig);
        thread = Thread.ofPlatform().daemon().name("live view").unstarted(this::run);
    }

    public Live start() {
        thread.start();
        return this;
    }

    @Override
    public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
        next.offer(scan, inbox, orders, events);
        if (count.get() >= MOST_WAITING && events.isEmpty()) {
            unseen.incrementAndGet();
        } else {
            count.incrementAndGet();
            waiting.add(new Taken(scan, orders, events));
        }
    }

    private void run() {
        while (!ending) {
            look();
            LockSupport.parkNanos(NAP_NANOS);
        }
        look();
    }

    /** A defect in this view is said in it; it ends neither the view nor the run. */
    private void look() {
        try {
            step();
        } catch (RuntimeException e) {
            trouble = Optional.of("a defect of this view: " + e);
        }
    }

    /** Looks at all that waits and publishes one snapshot of the last of it. Its own thread only, or a test. */
    void step() {
        Taken last = null;
        for (Taken taken = waiting.poll(); taken != null; taken = waiting.poll()) {
            count.decrementAndGet();
            see(taken);
            last = taken;
        }
        if (last != null) {
            now = Optional.of(snapshot(last));
            publishedNanos = System.nanoTime();
        }
    }

    private void see(Taken taken) {
        Scan scan = taken.scan();
        if (!begun) {
            begun = true;
            originNanos = scan.nanos();
        }
        history.take(scan);
        trends.take(scan);
        course.take(scan, taken.orders(), taken.events());
        for (Event event : taken.events()) {
            if (event instanceof Event.Warned warned) {
                warnings.addLast(warned.warning());
                if (warnings.size() > WARNINGS_KEPT) {
                    warnings.removeFirst();
                }
            }
        }
    }

    private Snapshot snapshot(Taken last) {
        long nanos = last.scan().nanos();
        return new Snapshot(last.scan(), nanos - originNanos, trends.over(last.scan()), course.doing(),
                course.waited(), course.forecast(nanos), course.ahead(nanos), margins.nearest(last.scan(), last.orders()), course.left(),
                course.strip(nanos), course.trip(), course.also(), List.copyOf(warnings), false, unseen.get());
    }

    /** The newest look; none before the first scan. Any thread. */
    public Optional<Snapshot> now() {
        return now;
    }

    /** Real time since the newest look, s. Any thread. */
    public double ageSeconds() {
        return (System.nanoTime() - publishedNanos) * 1e-9;
    }

    /** What is wrong with the view itself, if anything was. Any thread. */
    public Optional<String> trouble() {
        return trouble;
    }

    /** The run so far. Any thread. */
    public History history() {
        return history;
    }

    /** Looks at what is left and ends; the last snapshot stays, marked as the last. */
    @Override
    public void close() {
        ending = true;
        LockSupport.unpark(thread);
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        now = now.map(s -> new Snapshot(s.scan(), s.elapsedNanos(), s.trends(), s.doing(), s.waits(), s.forecast(),
                s.ahead(), s.nearest(), s.left(), s.strip(), s.trip(), s.also(), s.warnings(), true, s.unseen()));
    }
}
