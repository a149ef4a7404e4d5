package rigwarden.run;

import java.util.Locale;

/** Whether a run may go on that a crash, a power cut or a trip broke off. */
public sealed interface Answer {
    /** It may, from here, once the start-up is passed again and the cells show at rest what the account says. */
    record Allowed(PickUp from) implements Answer {}

    /**
     * It may not.
     *
     * @param condition the first that is not met
     * @param found what there is, in words
     * @param allowed what would do, in words
     */
    record Unmet(Condition condition, String found, String allowed) implements Answer {
        /** In one sentence for a person. */
        public String words() {
            return String.format(Locale.ROOT, "%s: found %s; allowed is %s.", condition.words(), found, allowed);
        }
    }

    /** What must hold, in the order in which it is looked at. */
    enum Condition {
        FILE("the run's file"),
        ENDING("how the run ended"),
        UNDECIDED("nothing was decided about it yet"),
        RIG("the rig file, with its calibrations"),
        PROGRAMME("the programme"),
        SOFTWARE("the software"),
        CAUSE("the trip's cause"),
        STEP("the step that was broken off"),
        OUTAGE("the outage"),
        REST_VOLTAGE("the cells' rest voltage");

        private final String words;

        Condition(String words) {
            this.words = words;
        }

        /** What it is about, in words. */
        public String words() {
            return words;
        }
    }
}
