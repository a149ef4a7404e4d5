package rigwarden.logbook;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import rigwarden.warden.Inbox;

/** A process that writes a run file, and says on its output which scan is stored, until somebody kills it. */
public final class WriterForKilling {
    private WriterForKilling() {}

    public static void main(String[] arguments) {
        AnyRun run = new AnyRun(Long.parseLong(arguments[1]), 27, 0.02, 3_000_000);
        RunSettings settings = new RunSettings(8000, 50, 1_000_000_000L, 60_000_000_000L, 1_000_000_000L, 0);
        try (RunWriter writer = RunWriter.create(Path.of(arguments[0]), AnyRun.ABOUT, run.channels(), settings,
                WriterForKilling::say)) {
            while (writer.lostRows() == 0) {
                while (writer.fill() > 0.5) {
                    LockSupport.parkNanos(100_000);
                }
                writer.offer(run.scan(), Inbox.EMPTY, run.orders(), List.of());
            }
        }
    }

    private static void say(long scan) {
        System.out.println(scan);
    }
}
