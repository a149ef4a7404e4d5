package rigwarden.run;

import java.util.Map;
import java.util.Optional;
import rigwarden.program.Step;

/**
 * A run that is over, as its file and the ledger show it.
 *
 * @param run its number
 * @param fault what is wrong with its file; empty when it is whole and replays to the orders stored in it
 * @param ending how it ended
 * @param decided what somebody decided about it already, if anything
 * @param rigHash SHA-256 of its rig file
 * @param programmeHash SHA-256 of its programme
 * @param versions of software and runtime
 * @param cleared whether its trip was cleared, by a granted clear
 * @param tripStands whether its file shows a trip that was not cleared, however the process ended after it
 * @param step that was broken off; empty outside any
 * @param recovers whether a later step recovers cells below the usual limits, which needs a start of its own
 * @param place where it would go on
 */
public record LeftOff(
        int run,
        Optional<String> fault,
        Ending ending,
        Optional<String> decided,
        String rigHash,
        String programmeHash,
        Map<String, String> versions,
        boolean cleared,
        boolean tripStands,
        Optional<Step> step,
        boolean recovers,
        Optional<PickUp> place) {
    /** How a run ended. */
    public enum Ending {
        /** Its process died, or its power was cut. */
        BROKEN_OFF("broken off"),
        TRIPPED("tripped"),
        /** By its programme or by a person: there is nothing to go on with. */
        OVER("over"),
        /** It still runs. */
        RUNNING("still running");

        private final String words;

        Ending(String words) {
            this.words = words;
        }
    }

    public LeftOff {
        versions = Map.copyOf(versions);
    }

    String endingWords() {
        return "it is " + ending.words;
    }
}
