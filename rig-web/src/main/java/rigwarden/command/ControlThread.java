package rigwarden.command;

import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/** The one thread of chips, warden and machine. */
final class ControlThread {
    private ControlThread() {}

    /** Does the work there and waits for its end. */
    static <T> T call(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        Thread thread = Thread.ofPlatform().name("control").unstarted(task);
        thread.start();
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return task.get();
                } catch (InterruptedException _) {
                    interrupted = true;
                }
            }
        } catch (ExecutionException e) {
            throw thrown(e.getCause());
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private static RuntimeException thrown(Throwable cause) {
        return switch (cause) {
            case RuntimeException e -> e;
            case Error e -> throw e;
            default -> new IllegalStateException("the control thread failed", cause);
        };
    }
}
