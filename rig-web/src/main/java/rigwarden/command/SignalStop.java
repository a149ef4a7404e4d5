package rigwarden.command;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * A signal (Ctrl-C, a service manager's stop) asks for a stop; the process ends when the work has said that it is done, with
 * the exit code that it gave, and ten seconds after it should have been done whatever it says.
 */
final class SignalStop implements AutoCloseable {
    private static final long LONGEST_SECONDS = 10;

    private final long longestSeconds;
    private final CountDownLatch done = new CountDownLatch(1);
    private final Thread hook = new Thread(this::signalled, "stop on signal");
    private volatile boolean requested;
    private volatile int exit = Exits.STOPPED;

    SignalStop() {
        this(0);
    }

    /** Where the work must watch on for a while after the stop, s. */
    SignalStop(double watchesSeconds) {
        longestSeconds = LONGEST_SECONDS + (long) Math.ceil(watchesSeconds);
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void signalled() {
        requested = true;
        try {
            if (done.await(longestSeconds, TimeUnit.SECONDS)) {
                System.out.flush();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Runtime.getRuntime().halt(exit);
    }

    /** Whether a signal has come. */
    boolean requested() {
        return requested;
    }

    /** The work has ended so; what still goes on may be cut short by a signal. */
    void ended(int code) {
        exit = code;
    }

    /** The work is done and everything is written. */
    int done(int code) {
        exit = code;
        done.countDown();
        return code;
    }

    @Override
    public void close() {
        done.countDown();
        if (!requested) {
            Runtime.getRuntime().removeShutdownHook(hook);
        }
    }
}
