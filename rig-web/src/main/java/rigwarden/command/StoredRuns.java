package rigwarden.command;

import java.nio.file.Files;
import java.nio.file.Path;

/** Finds the file of a run by its number. */
final class StoredRuns {
    private StoredRuns() {}

    /**
     * The run's file.
     *
     * @throws Refused where there is none
     */
    static Path file(LogbookOption logbook, int run) {
        Path file = logbook.folder().resolve("runs").resolve(String.format("%04d.db", run));
        if (!Files.isReadable(file)) {
            throw new Refused("There is no run " + run + " in " + logbook.folder()
                    + "; `rigwarden runs` lists those that there are.");
        }
        return file;
    }
}
