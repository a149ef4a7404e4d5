package rigwarden.paper;

import rigwarden.program.Ended;

/** What ended a step, in words for a person. */
final class EndWords {
    private EndWords() {}

    static String of(Ended by) {
        return switch (by) {
            case TAPER -> "full, the current fell to its taper";
            case CEILING -> "a cell at its ceiling before the taper, not quite full";
            case CUT_OFF -> "the first cell at its cut-off";
            case CHARGER -> "the charger itself";
            case SINK -> "the load itself";
            case PROTECTION -> "the battery's own protection";
            case PROVED -> "the one element that was opened, alone";
            case SETTLED -> "the cells settled";
            case TIME -> "its time was over";
            case CHARGE_REACHED -> "the charge wanted is in";
            case NEVER_FIT -> "given up, the cells stayed too cold or too warm for eight hours";
            case NOT_CONTINUED -> "nothing: it did not go on";
            case CUT -> "a crash or a power cut";
            case TRIPPED -> "a trip";
            case STOPPED -> "a person's stop";
        };
    }
}
