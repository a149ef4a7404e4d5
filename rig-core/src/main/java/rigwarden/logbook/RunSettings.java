package rigwarden.logbook;

import java.util.concurrent.TimeUnit;

/**
 * How a run is written.
 *
 * @param queueRows rows held in memory until they are committed, 8…1,000,000
 * @param commitRows rows after which a transaction ends before its second is over; bounds the memory of a rehearsal
 * @param commitNanos real time after which a transaction ends
 * @param checkpointNanos real time between two checkpoints
 * @param closeNanos how long closing tries to write what is left
 * @param ballastBytes size of a file that is given up when the disk is full; 0 for none
 */
public record RunSettings(
        int queueRows, int commitRows, long commitNanos, long checkpointNanos, long closeNanos, long ballastBytes) {
    /** 13 minutes at 10 Hz, one second to a commit, a minute to a checkpoint, 32 MiB of ballast. */
    public static final RunSettings USUAL = new RunSettings(8_000, 1_000, TimeUnit.SECONDS.toNanos(1),
            TimeUnit.SECONDS.toNanos(60), TimeUnit.SECONDS.toNanos(20), 32L << 20);

    public RunSettings {
        if (queueRows < 8 || queueRows > 1_000_000 || commitRows < 1 || commitRows > queueRows || commitNanos < 0
                || checkpointNanos < 0 || closeNanos < 0 || ballastBytes < 0) {
            throw new IllegalArgumentException("not settings of a run file: " + queueRows + " rows in the queue, "
                    + commitRows + " to a commit, " + ballastBytes + " bytes of ballast");
        }
    }

    /** The same with this ballast. */
    public RunSettings withBallast(long bytes) {
        return new RunSettings(queueRows, commitRows, commitNanos, checkpointNanos, closeNanos, bytes);
    }

    /** The same with this queue. */
    public RunSettings withQueue(int rows, int rowsToCommit) {
        return new RunSettings(rows, rowsToCommit, commitNanos, checkpointNanos, closeNanos, ballastBytes);
    }
}
