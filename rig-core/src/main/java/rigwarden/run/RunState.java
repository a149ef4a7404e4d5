package rigwarden.run;

import java.util.Optional;
import rigwarden.program.Ended;
import rigwarden.warden.Closing;

/** Where a run is. Every state carries all that the machine knows; there is no memory beside it. */
public sealed interface RunState {
    /** Nothing was started. */
    record Idle() implements RunState {}

    /** Started; so many scans in a row were healthy. */
    record Proving(int healthyScans) implements RunState {}

    /**
     * Before a step's energy: the cells are outside the temperatures at which it may begin, or the bus is not yet empty.
     *
     * @param notBeforeNanos when it may begin at the earliest: a step that paused does not go on at once
     * @param said whether an event has told that the cells are too warm or too cold
     */
    record Waiting(Progress progress, long sinceNanos, long notBeforeNanos, boolean said) implements RunState {}

    /**
     * A switched source works onto the open bus alone, until its voltage stands still; then the bus empties.
     *
     * @param volts bus when it last moved
     * @param steadyNanos since when it has stood there
     * @param off whether it has been switched off again
     */
    record Showing(Progress progress, double volts, long steadyNanos, boolean off) implements RunState {}

    /** On the way from open to current; {@code stageNanos} is when the stage began. */
    record Closes(Progress progress, Closing stage, long stageNanos) implements RunState {}

    /** Current flows. */
    record Stepping(Progress progress) implements RunState {}

    /**
     * One element alone has been ordered open.
     *
     * @param gone scans in a row without current
     * @param seconds from the order to the first of them
     */
    record Parting(Progress progress, long sinceNanos, int gone, double seconds) implements RunState {}

    /** Everything is open, by programme. */
    record Resting(Progress progress) implements RunState {}

    /**
     * On the way from current to open.
     *
     * @param by what ended the step; empty when it pauses and goes on later
     * @param off whether Off has been wished, after the current was brought to zero
     */
    record Opening(Progress progress, Optional<Ended> by, boolean off, long sinceNanos) implements RunState {}

    /** The warden tripped in this step; {@code told} trips have been told of. */
    record Interrupted(int step, int told) implements RunState {}

    /** Over; {@code told} trips that came afterwards have been told of. */
    record Finished(Ended by, int told) implements RunState {}

    RunState IDLE = new Idle();

    /** Number of the step that the run is in, from 1; 0 where it is in none. */
    static int step(RunState state) {
        return switch (state) {
            case Idle _, Proving _, Finished _ -> 0;
            case Waiting s -> s.progress().step() + 1;
            case Showing s -> s.progress().step() + 1;
            case Closes s -> s.progress().step() + 1;
            case Stepping s -> s.progress().step() + 1;
            case Parting s -> s.progress().step() + 1;
            case Resting s -> s.progress().step() + 1;
            case Opening s -> s.progress().step() + 1;
            case Interrupted s -> s.step();
        };
    }
}
