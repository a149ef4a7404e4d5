package rigwarden.proof;

/** What is done to an instrument from outside. */
enum Suffering {
    /** Its process gets SIGSTOP. */
    STOPPED,
    /** Its process gets SIGKILL. */
    KILLED,
    /** Two bytes in five become others, in both directions. */
    GARBLED,
    /** The adapter is pulled: its pseudo-terminal is gone. */
    UNPLUGGED
}
