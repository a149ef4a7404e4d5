package rigwarden.logbook;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Keeps a second process out of a folder; the kernel lets go of it when the process ends, however it ends. */
final class FolderLock implements AutoCloseable {
    private final FileChannel channel;

    private FolderLock(FileChannel channel) {
        this.channel = channel;
    }

    /** Takes the lock, or throws {@link LogbookException} if another holds it. */
    static FolderLock take(Path dir) throws IOException {
        FileChannel channel =
                FileChannel.open(dir.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        boolean taken = false;
        try {
            FileLock lock = channel.tryLock();
            taken = lock != null;
        } catch (OverlappingFileLockException _) {
            // Held by this very process: the same answer as for another.
            taken = false;
        } finally {
            if (!taken) {
                channel.close();
            }
        }
        if (!taken) {
            throw new LogbookException("The logbook in " + dir + " is in use by another process. If that is a run: leave it alone, look at its page, and ask again when it is over.");
        }
        return new FolderLock(channel);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
