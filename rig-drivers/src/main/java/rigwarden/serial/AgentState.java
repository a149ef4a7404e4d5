package rigwarden.serial;

import rigwarden.warden.Failure;

/**
 * All that an agent remembers between steps, so that a rig can be copied while it runs.
 *
 * @param phase where it stands with its port
 * @param dueNanos when the port is opened again, or the next poll is due
 * @param askedNanos when the open question was sent
 * @param quietNanos since when nothing unexpected has arrived
 * @param greeted whether it has been asked for its name, and limited, since the port was opened
 * @param limited whether the instrument's own limits have been set and read back since it was last told Off, or last failed to answer
 * @param order what is wanted
 * @param offWaiting whether an Off has not been carried out yet
 * @param carried what was sent last
 * @param unsure whether that may not have been obeyed
 * @param refused whether the instrument said no to it since the last poll
 * @param complained whether it complained in the last poll, or said something odd
 * @param switchings how often it was told to switch on since the last Off
 * @param heard what was published last
 */
public record AgentState(
        Phase phase,
        long dueNanos,
        long askedNanos,
        long quietNanos,
        boolean greeted,
        boolean limited,
        Order order,
        boolean offWaiting,
        Order carried,
        boolean unsure,
        boolean refused,
        boolean complained,
        int switchings,
        Heard heard) {

    /** Where an agent stands with its port. */
    public enum Phase {
        /** No port; it is opened when due. */
        CLOSED,
        /** Bytes are thrown away until the line has been silent for the time that an answer may take. */
        DRAINING,
        /** An act is open. */
        TALKING,
        /** Nothing is open. */
        READY
    }

    /** Not yet opened. */
    public static AgentState at(long nanos) {
        return new AgentState(Phase.CLOSED, nanos, nanos, nanos, false, false, Order.OFF, false, Order.OFF, true, false, false,
                0, new Heard.Silent(Failure.NOT_READ, nanos));
    }
}
