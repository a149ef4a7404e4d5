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
 * @param of what was proved
 * @param who signed it off
 * @param rehearsed whether it was shown on emulated hardware, so that it proves nothing about the rig
 */
public record StoredProof(String rig, OptionalInt run, String kind, boolean passed, String made, String words, Of of, String who,
        boolean rehearsed) {
    /**
     * What a proof is of; of anything else it says nothing.
     *
     * @param rigHash SHA-256 of the rig file, hexadecimal
     * @param calibrationHash SHA-256 of the calibrations in force beside it, hexadecimal; empty where there are none
     * @param cells what was written on the cells in it, from B− to B+, with commas between; empty where nobody said
     */
    public record Of(String rigHash, String calibrationHash, String cells) {}

    /** The kind of the row that stands for a whole proof; it is written last. */
    public static final String WHOLE = "whole";
}
