package rigwarden.prove;

import rigwarden.rig.Probe;

/** Where a probe sits, for a person who stands before it. */
final class ProbeSeat {
    private ProbeSeat() {}

    static String of(Probe probe) {
        return switch (probe.place()) {
            case BODY -> "on the body of cell " + probe.cell();
            case STUD -> "on the " + (probe.positive() ? "positive" : "negative") + " stud of cell " + probe.cell();
            case BAR -> "on the bar between cells " + probe.cell() + " and " + (probe.cell() + 1);
            case SHUNT_BODY -> "on the shunt";
            case CONTACTOR_BODY -> "on the contactor";
            case ROOM -> "that measures the room";
            case LOOSE -> "that is loose";
            case CURRENT, ACCUMULATED, CLOCK_RATIO, PACK_VOLTS, TAP_VOLTS, CELL_VOLTS, BUS_VOLTS, LOOP, COIL_FEED, FEEDBACK, ARM, SOURCE_VOLTS,
                    SOURCE_AMPS, SOURCE_ON, SINK_VOLTS, SINK_AMPS, SINK_ON, RECORDER_LAG, FREE_SPACE, LATENESS ->
                throw new IllegalArgumentException("no probe sits at " + probe.place());
        };
    }
}
