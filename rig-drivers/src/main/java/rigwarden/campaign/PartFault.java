package rigwarden.campaign;

/** How a part can break: the list of ISO 13849-2, from memory of the standard, in five words. Nothing in it comes from this project's rules. */
public enum PartFault {
    /** A conductor, a joint or a contact that should be closed is open. */
    OPEN,
    /** Two conductors touch that should not, or a part passes what it should block. */
    SHORT,
    /** A value changes. */
    DRIFT,
    /** A contact does not open. */
    WELD,
    /** Something stays as it is, whatever it is told. */
    STUCK
}
