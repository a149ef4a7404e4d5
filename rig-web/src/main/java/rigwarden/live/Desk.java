package rigwarden.live;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Supplier;
import rigwarden.warden.Inbox;
import rigwarden.warden.Request;

/**
 * Where people's wishes lie until the next scan takes them. STOP is a flag: it waits behind nothing, and a full desk
 * does not keep it out.
 */
public final class Desk implements Supplier<Inbox> {
    private static final int MOST = 8;

    private final BlockingQueue<Request> requests = new ArrayBlockingQueue<>(MOST);
    private volatile boolean stop;

    /** A person says stop. Any thread. */
    public void stop() {
        stop = true;
    }

    /**
     * A person asks for something. Any thread.
     *
     * @return false when so much lies here already that this was not taken
     */
    public boolean ask(Request request) {
        return requests.offer(request);
    }

    /** What came since the last scan. Control thread only; a stop that comes meanwhile is in the next. */
    @Override
    public Inbox get() {
        if (!stop && requests.isEmpty()) {
            return Inbox.EMPTY;
        }
        boolean stopped = stop;
        if (stopped) {
            stop = false;
        }
        List<Request> taken = new ArrayList<>(MOST);
        requests.drainTo(taken);
        return new Inbox(stopped, List.copyOf(taken));
    }
}
