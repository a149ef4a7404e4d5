package rigwarden.logbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Moves a ledger aside that does not open, and says what a run file tells that its ledger does not know. */
final class Aside {
    private static final List<String> BESIDE = List.of("-journal", "-wal", "-shm");

    private Aside() {}

    /** Renames the ledger and what SQLite left beside it; returns the ledger's new place. Nothing is written over. */
    static Path move(Path ledger, String label) throws IOException {
        String name = "ledger-aside-" + label.replaceAll("[^0-9A-Za-z]", "");
        Path aside = ledger.resolveSibling(name + ".db");
        for (int again = 2; Files.exists(aside); again++) {
            aside = ledger.resolveSibling(name + "-" + again + ".db");
        }
        Files.move(ledger, aside);
        for (String end : BESIDE) {
            Path beside = ledger.resolveSibling(ledger.getFileName() + end);
            if (Files.exists(beside)) {
                Files.move(beside, aside.resolveSibling(aside.getFileName() + end));
            }
        }
        return aside;
    }

    /** An entry for a run file that the ledger does not know; a file still in use counts as running until recovered. */
    static LedgerRun found(int number, Path file) {
        String name = file.getFileName().toString();
        try (RunReader reader = RunReader.open(file)) {
            Outcome outcome = Files.isWritable(file) && Files.exists(file.resolveSibling(name + "-wal"))
                    ? Outcome.RUNNING
                    : reader.lastOutcome().map(Aside::outcome).orElse(Outcome.INTERRUPTED);
            Optional<String> hash = outcome == Outcome.RUNNING ? Optional.empty() : Optional.of(Recovery.sha256(file));
            return new LedgerRun(number, name, "not known", "not known", reader.about().started(), outcome,
                    "found in runs, not in the ledger", hash);
        } catch (LogbookException | IOException e) {
            return new LedgerRun(number, name, "not known", "not known", "not known", Outcome.INTERRUPTED,
                    "found in runs, not in the ledger; " + e.getMessage(), Optional.empty());
        }
    }

    private static Outcome outcome(String kind) {
        return switch (kind) {
            case "finished" -> Outcome.FINISHED;
            case "tripped" -> Outcome.TRIPPED;
            case "stop_requested" -> Outcome.STOPPED;
            default -> Outcome.INTERRUPTED;
        };
    }
}
