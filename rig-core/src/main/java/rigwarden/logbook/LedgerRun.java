package rigwarden.logbook;

import java.util.Optional;

/**
 * A run as the ledger lists it.
 *
 * @param number from 1, never used twice
 * @param file name of its file in the folder {@code runs}
 * @param rig name of the rig
 * @param programme name of the programme
 * @param started wall-clock label
 * @param outcome how it stands
 * @param words last words on it; empty while it runs
 * @param sha256 of its closed file, hexadecimal
 */
public record LedgerRun(
        int number,
        String file,
        String rig,
        String programme,
        String started,
        Outcome outcome,
        String words,
        Optional<String> sha256) {}
