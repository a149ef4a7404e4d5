package rigwarden.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.RunAbout;

/** Whether a run's file is still the one that was closed: the ledger keeps its SHA-256 from then. */
final class Seal {
    private Seal() {}

    /** A sentence where it is not; nothing where it is, or where nobody knows. */
    static Optional<String> broken(LedgerRun run, Path file) {
        if (run.sha256().isEmpty()) {
            return Optional.empty();
        }
        try {
            return RunAbout.hashOf(file).equals(run.sha256().get()) ? Optional.empty() : Optional.of(String.format(
                    "THE FILE OF RUN %04d WAS CHANGED since it was closed: its SHA-256 is not that in the ledger. What it says now may never have been measured.",
                    run.number()));
        } catch (IOException _) {
            return Optional.empty();
        }
    }
}
