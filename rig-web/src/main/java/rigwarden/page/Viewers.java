package rigwarden.page;

import io.javalin.http.sse.SseClient;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;

/** All live viewers and the one broadcaster that hands each the same look, twice a second. */
final class Viewers implements AutoCloseable {
    static final int MOST = 16;
    private static final long EVERY_NANOS = 500_000_000L;

    private final Supplier<View> newest;
    private final Set<Viewer> viewers = ConcurrentHashMap.newKeySet();
    private final AtomicInteger places = new AtomicInteger(MOST);
    private final Thread thread;
    private volatile boolean ending;

    Viewers(Supplier<View> newest) {
        this.newest = newest;
        thread = Thread.ofPlatform().daemon().name("broadcaster").start(this::broadcast);
    }

    private void broadcast() {
        View last = View.NOTHING;
        while (!ending) {
            if (!viewers.isEmpty()) {
                View view = look(last);
                if (view != last) {
                    last = view;
                    viewers.forEach(viewer -> viewer.offer(view));
                }
            }
            LockSupport.parkNanos(EVERY_NANOS);
        }
    }

    /** A look that cannot be put into words is no reason never to look again. */
    private View look(View last) {
        try {
            return newest.get();
        } catch (RuntimeException _) {
            return last;
        }
    }

    /** Whether no more can be taken. */
    boolean full() {
        return places.get() <= 0;
    }

    int count() {
        return viewers.size();
    }

    /** Takes a viewer, or closes it when another took the last place just before. */
    void join(SseClient client) {
        if (places.getAndUpdate(p -> Math.max(0, p - 1)) <= 0) {
            client.close();
            return;
        }
        Viewer[] made = new Viewer[1];
        made[0] = new Viewer(client, () -> leave(made[0]));
        client.keepAlive();
        client.onClose(made[0]::end);
        viewers.add(made[0]);
        made[0].offer(newest.get());
        made[0].start();
    }

    private void leave(Viewer viewer) {
        if (viewers.remove(viewer)) {
            places.incrementAndGet();
        }
    }

    /** Ends every stream; browsers come back by themselves. */
    void drop() {
        viewers.forEach(Viewer::end);
    }

    @Override
    public void close() {
        ending = true;
        LockSupport.unpark(thread);
        drop();
    }
}
