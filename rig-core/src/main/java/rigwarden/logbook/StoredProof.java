package rigwarden.logbook;

import java.util.OptionalInt;

/**
 * One outcome of a proof as the ledger keeps it.
 *
 * @param rig name of the rig
 * @param run number of the run in which it was shown; none for what was looked at with nothing energised
 * @param kind what was proved; {@link #WHOLE} for the proof as a whole
 * @param passed whether it holds
 * @param made wall-clock label
 * @param words what was found
 * @param rigHash SHA-256 of the rig file, hexadecimal
 * @param who signed it off
 * @param rehearsed whether it was shown on emulated hardware, so that it proves nothing about the rig
 */
public record StoredProof(String rig, OptionalInt run, String kind, boolean passed, String made, String words, String rigHash, String who,
        boolean rehearsed) {
    /** The kind of the row that stands for a whole proof; it is written last. */
    public static final String WHOLE = "whole";
}
