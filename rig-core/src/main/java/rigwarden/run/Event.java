package rigwarden.run;

import java.util.List;
import rigwarden.program.Ended;
import rigwarden.program.Step;
import rigwarden.warden.Trip;
import rigwarden.warden.Warning;

/** Something that happened, in the past tense. */
public sealed interface Event {
    /** An operator started the programme with the arm input on. */
    record Started() implements Event {}

    /** An operator let a run go on that had been broken off, with the arm input on; {@code step} counts from 1. */
    record Continued(int run, int step, double outageSeconds) implements Event {}

    /** An operator asked for that, and a condition was not met. */
    record NotContinued(Answer.Unmet unmet) implements Event {}

    /** Beats were withheld and the contactor let go in time; {@code seconds} from the last beat to open feedback. */
    record HeartbeatProved(double seconds) implements Event {}

    /** A switched source showed this voltage without load, before it met a cell; V. */
    record NoLoadShown(String source, double volts) implements Event {}

    /** One element alone was opened, and the current was gone so many seconds after the order. */
    record StopProved(String device, Step.Element element, double seconds) implements Event {}

    /** A step began; {@code step} counts from 1. */
    record StepBegun(int step, String kind) implements Event {}

    /** A step ended; for a rest {@code settled} says whether the cells were. */
    record StepEnded(int step, Ended by, boolean settled, Account account) implements Event {}

    /** A step could not begin, or go on, at once: the cells are too warm or too cold for it. */
    record Waited(int step, double celsius) implements Event {}

    /** The warden tripped; the first cause, and what hangs on it. */
    record Tripped(Trip first, List<Trip> also) implements Event {}

    /** A rule that only warns began to. */
    record Warned(Warning warning) implements Event {}

    /** A person stopped the run. */
    record StopRequested() implements Event {}

    /** A person cleared the trip, with the cause gone and the arm input on. */
    record Cleared() implements Event {}

    /** The programme is over. */
    record Finished(Ended by) implements Event {}

    /** Whether it must be on the card before the next second is over. */
    default boolean weighty() {
        return !(this instanceof Warned);
    }
}
