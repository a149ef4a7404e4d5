package rigwarden.logbook;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongConsumer;
import rigwarden.loop.Recorder;
import rigwarden.rig.Channel;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/**
 * Writes a run file from a thread of its own, which alone writes to it. A row stays in the queue until its transaction
 * is committed, so that a failed one is tried again from there: meanwhile the lag grows, and the warden trips on it.
 */
public final class RunWriter implements Recorder, AutoCloseable {
    private static final long NAP_NANOS = TimeUnit.MILLISECONDS.toNanos(50);
    private static final long RETRY_NANOS = TimeUnit.MILLISECONDS.toNanos(200);

    /** Nobody confirms more between two commits. */
    private static final int MOST_NOTES = 16;

    /** Something that happened beside the run. */
    private record Note(String kind, String words, OptionalDouble value, Optional<Scan> scan) {}

    private final RunFile file;
    private final RunRows rows;
    private final Ring ring;
    private final RunSettings settings;
    private final LongConsumer onStored;
    private final Thread thread;
    private final int wakeRows;
    private final AtomicLong lost = new AtomicLong();
    private volatile boolean closing;
    private volatile long closeByNanos;
    private volatile long storedScan;
    private volatile Optional<String> trouble = Optional.empty();

    private final BlockingQueue<Note> notes = new ArrayBlockingQueue<>(MOST_NOTES);
    private int notesWritten;

    private long cursor;
    private boolean open;
    private boolean over;
    private long lastScan;
    private long lastNanos;
    private long dueNanos;
    private long checkpointNanos = System.nanoTime();

    /** Takes the file over; {@link #start} begins the writing. */
    RunWriter(RunFile file, int channels, RunSettings settings, LongConsumer onStored) {
        this.file = file;
        this.settings = settings;
        this.onStored = onStored;
        ring = new Ring(settings.queueRows());
        wakeRows = Math.max(1, settings.queueRows() / 8);
        thread = Thread.ofPlatform().name("logbook").daemon(true).unstarted(this::work);
        try {
            rows = new RunRows(file, channels);
        } catch (SQLException e) {
            file.close();
            throw new LogbookException("The run file cannot be written", e);
        }
    }

    /**
     * Makes a run file and starts its thread.
     *
     * @param path a file that is not there yet
     * @param about what the file says about itself
     * @param channels the rig's, index = place, 1…64
     * @param settings queue, commits, ballast
     * @param onStored told the highest scan number after every commit, on the writing thread
     * @throws LogbookException if the file cannot be made or there is one already
     */
    public static RunWriter create(
            Path path, RunAbout about, List<Channel> channels, RunSettings settings, LongConsumer onStored) {
        RunFile file = RunFile.create(path, about, channels, settings.ballastBytes());
        return new RunWriter(file, channels.size(), settings, onStored).start();
    }

    RunWriter start() {
        thread.start();
        return this;
    }

    /** Takes a cycle's record; one thread only. A row that finds the queue full is counted in {@link #lostRows}. */
    @Override
    public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
        Row row = new Row(scan, inbox, orders, events, System.nanoTime());
        if (closing || !ring.offer(row)) {
            lost.incrementAndGet();
        } else if (ring.offered() % wakeRows == 0 || row.weighty()) {
            LockSupport.unpark(thread);
        }
    }

    /**
     * Takes down, as an event, something that a person did beside the run. Any thread; never waits.
     *
     * @param kind a word, as in {@link StoredEvent}
     * @return false when too much is waiting, and nothing was taken down
     */
    public boolean note(String kind, String words) {
        return note(new Note(kind, words, OptionalDouble.empty(), Optional.empty()));
    }

    /** The same, with a number. */
    public boolean note(String kind, String words, double value) {
        return note(new Note(kind, words, OptionalDouble.of(value), Optional.empty()));
    }

    /** The same, of this scan, which may have been written already. */
    public boolean note(String kind, String words, Scan scan) {
        return note(new Note(kind, words, OptionalDouble.empty(), Optional.of(scan)));
    }

    private boolean note(Note note) {
        boolean taken = !closing && notes.offer(note);
        LockSupport.unpark(thread);
        return taken;
    }

    /** Real time since the oldest row that is not yet committed was offered, nanoseconds; 0 if all are. */
    public long lagNanos() {
        long now = System.nanoTime();
        return Math.max(0, now - ring.oldestNanos(now));
    }

    /** Share of the queue in use, 0…1, rows of the open transaction included. */
    public double fill() {
        return ring.fill();
    }

    /** Highest scan number in a committed transaction; 0 before the first. */
    public long storedScan() {
        return storedScan;
    }

    /** Rows that were never written, because the queue was full or the file closed. */
    public long lostRows() {
        return lost.get();
    }

    /** What keeps rows from being committed now, or kept the last ones when the file was closed. */
    public Optional<String> trouble() {
        return trouble;
    }

    /**
     * Writes what is left, closes the file and makes it read-only; waits for that. Where that cannot be done in time
     * {@link #trouble} says why, and the file is left as after a crash.
     */
    @Override
    public void close() {
        if (!closing) {
            closeByNanos = System.nanoTime() + settings.closeNanos();
            closing = true;
        }
        LockSupport.unpark(thread);
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException _) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void work() {
        while (!over) {
            try {
                pass();
            } catch (SQLException | RuntimeException e) {
                backOut(e);
            }
        }
        lost.addAndGet(ring.offered() - ring.released());
    }

    private void pass() throws SQLException {
        boolean last = closing;
        long end = ring.offered();
        while (cursor < end) {
            write(ring.row(cursor));
        }
        writeNotes();
        if (open && (last || System.nanoTime() - dueNanos >= 0)) {
            commit();
        }
        if (last) {
            file.finish();
            over = true;
        } else if (cursor == ring.offered()) {
            LockSupport.parkNanos(open ? Math.clamp(dueNanos - System.nanoTime(), 1, NAP_NANOS) : NAP_NANOS);
        }
    }

    /** A note stays in its queue, as a row in its ring does, until it is committed. */
    private void writeNotes() throws SQLException {
        if (notes.size() > notesWritten) {
            begin(System.nanoTime());
            List<Note> all = List.copyOf(notes);
            for (Note note : all.subList(notesWritten, all.size())) {
                rows.put(StoredEvent.beside(note.scan().map(Scan::number).orElse(lastScan),
                        note.scan().map(Scan::nanos).orElse(lastNanos), note.kind(), note.words(), note.value()));
                notesWritten++;
            }
            commit();
        }
    }

    private void begin(long sinceNanos) throws SQLException {
        if (!open) {
            file.begin();
            open = true;
            dueNanos = sinceNanos + settings.commitNanos();
        }
    }

    private void write(Row row) throws SQLException {
        begin(row.offeredNanos());
        rows.put(row);
        lastScan = row.scan().number();
        lastNanos = row.scan().nanos();
        cursor++;
        boolean due = (cursor & 15) == 0 && System.nanoTime() - dueNanos >= 0;
        if (due || cursor - ring.released() >= settings.commitRows() || row.weighty()) {
            commit();
        }
    }

    private void commit() throws SQLException {
        file.commit();
        open = false;
        rows.keep();
        for (; notesWritten > 0; notesWritten--) {
            notes.poll();
        }
        ring.release(cursor);
        storedScan = lastScan;
        trouble = Optional.empty();
        onStored.accept(lastScan);
        long now = System.nanoTime();
        if (now - checkpointNanos >= settings.checkpointNanos()) {
            checkpointNanos = now;
            file.checkpoint();
        }
    }

    /** Undoes the open transaction, frees the ballast if the disk is full, and waits a little before the next try. */
    private void backOut(Exception why) {
        trouble = Optional.of(String.valueOf(why.getMessage()));
        file.rollback();
        open = false;
        rows.back();
        notesWritten = 0;
        cursor = ring.released();
        if (Sqlite.full(why) && file.dropBallast()) {
            return;
        }
        if (closing && System.nanoTime() - closeByNanos >= 0) {
            file.close();
            over = true;
        } else {
            LockSupport.parkNanos(RETRY_NANOS);
        }
    }
}
