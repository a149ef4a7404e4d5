package rigwarden.paper;

import rigwarden.logbook.StoredEvent;

/** Which step it is, and the how-manieth, counted over a run's events. */
final class CellClock {
    private int steps;
    private int cycles;
    private boolean discharged;
    private String number = "";
    private String kind = "";

    void take(StoredEvent event) {
        switch (event.kind()) {
            case "step_begun" -> begun(event);
            case "step_ended" -> {
                number = "";
                kind = "";
            }
            case String _ -> { }
        }
    }

    private void begun(StoredEvent event) {
        steps++;
        number = Integer.toString(event.step().orElseThrow());
        kind = event.words();
        switch (kind) {
            case "discharge", "heat_run" -> discharged = true;
            case "charge" -> {
                cycles += discharged ? 1 : 0;
                discharged = false;
            }
            case String _ -> { }
        }
    }

    int steps() {
        return steps;
    }

    int cycles() {
        return cycles;
    }

    /** Number of the programme's step, from 1; empty between steps. */
    String number() {
        return number;
    }

    /** Its word; empty between steps. */
    String kind() {
        return kind;
    }
}
