package rigwarden.prove;

/** What the person says at this instant. */
public enum Answer {
    /** Nothing. */
    NONE,
    /** It is done, or it is so. */
    DONE,
    /** Leave it out, or it is not so. */
    SKIP
}
