package rigwarden.logbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.function.Consumer;
import rigwarden.rig.Channel;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** Writes a run file of rows that are there already: nobody waits for it, so that no queue and no thread is between. */
public final class WholeRun {
    private static final int COMMIT_ROWS = 20_000;
    /** While it is not whole it has no run's name. */
    private static final String PART = ".part";

    private final RunFile file;
    private final RunRows rows;
    private long put;
    private long lastScan;
    private long lastNanos;

    private WholeRun(RunFile file, int channels) throws SQLException {
        this.file = file;
        rows = new RunRows(file, channels);
        file.begin();
    }

    /** Writes it all, or leaves nothing. Throws what {@code fill} throws, or {@link LogbookException} where it cannot be written. */
    static void write(Path target, RunAbout about, List<Channel> channels, Consumer<WholeRun> fill) {
        Path part = target.resolveSibling(target.getFileName() + PART);
        boolean whole = false;
        try {
            delete(part);
            RunFile file = RunFile.create(part, about, channels, 0);
            try {
                WholeRun run = new WholeRun(file, channels.size());
                fill.accept(run);
                run.rows.put(StoredEvent.beside(run.lastScan, run.lastNanos, "finished", "brought in whole"));
                file.commit();
                file.finish();
                whole = true;
            } finally {
                if (!whole) {
                    file.close();
                }
            }
            Files.move(part, target);
        } catch (SQLException | IOException e) {
            whole = false;
            throw new LogbookException("The run file " + target + " cannot be written", e);
        } finally {
            if (!whole) {
                quietlyDelete(part);
            }
        }
    }

    /** What another import left when its process was killed, with SQLite's own files beside it. */
    private static void delete(Path part) throws IOException {
        for (String beside : List.of("", "-wal", "-shm", "-journal")) {
            Files.deleteIfExists(part.resolveSibling(part.getFileName() + beside));
        }
    }

    private static void quietlyDelete(Path part) {
        try {
            delete(part);
        } catch (IOException _) {
            // It has no run's name, and the next import deletes it.
        }
    }

    /**
     * The next row.
     *
     * @param scan its number is greater than that of the row before
     * @param events of steps
     * @param remarks what is to be known besides, each an event of the kind {@code line_amiss}
     */
    public void put(Scan scan, List<Event> events, List<String> remarks) {
        try {
            rows.put(new Row(scan, Inbox.EMPTY, Orders.OFF, events, 0));
            lastScan = scan.number();
            lastNanos = scan.nanos();
            remark(remarks);
            put++;
            if (put % COMMIT_ROWS == 0) {
                file.commit();
                rows.keep();
                file.begin();
            }
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be written", e);
        }
    }

    /** Remarks after the last row. */
    public void remarks(List<String> words) {
        try {
            remark(words);
        } catch (SQLException e) {
            throw new LogbookException("The run file cannot be written", e);
        }
    }

    private void remark(List<String> remarks) throws SQLException {
        for (String words : remarks) {
            rows.put(StoredEvent.beside(lastScan, lastNanos, "line_amiss", words));
        }
    }
}
