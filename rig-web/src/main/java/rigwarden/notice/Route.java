package rigwarden.notice;

/** One way to a person elsewhere. */
public interface Route extends AutoCloseable {
    /** A person's name for it. */
    String name();

    /** Where it leads, for a person, without anything secret. */
    String where();

    /** Whether notices of this kind go this way. */
    boolean takes(What what);

    /** Sends once, on the caller's thread, within half a minute. Never throws; an interrupted thread stays so. */
    Delivery send(Notice notice);

    /** Lets go of what it holds, if it holds anything between two notices; a send that is under way may fail. */
    @Override
    default void close() {}
}
