package rigwarden.serial;

import rigwarden.warden.Failure;

/** The latest that is known of an instrument. */
public sealed interface Heard {
    /**
     * An answer.
     *
     * @param volts at its terminals
     * @param amps through them, its own sign
     * @param on whether it says that it is on
     * @param takenNanos when it was asked, so that it is never taken for newer than it is
     */
    record Answer(double volts, double amps, boolean on, long takenNanos) implements Heard {}

    /**
     * No usable answer.
     *
     * @param why what was wrong
     * @param sinceNanos first time that it was
     */
    record Silent(Failure why, long sinceNanos) implements Heard {}
}
