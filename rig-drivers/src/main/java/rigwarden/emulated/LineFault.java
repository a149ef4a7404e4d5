package rigwarden.emulated;

/** How a serial link to an instrument can be wrong. */
public enum LineFault {
    /** Nothing is wrong. */
    HEALTHY,
    /** Bytes are sent and lost; nothing comes back, nothing is acted on. */
    SILENT,
    /** The instrument answers questions and accepts orders without following them. */
    DEAF_BUT_ALIVE,
    /** Some of the bytes that come back are others. */
    GARBLED,
    /** Only the first half of each answer comes back, without its end. */
    HALF_ANSWER,
    /** The adapter is out of its socket: the port is lost until it is opened anew. */
    UNPLUGGED
}
