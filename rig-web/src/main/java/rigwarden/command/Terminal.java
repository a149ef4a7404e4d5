package rigwarden.command;

/** Whether a person looks. */
final class Terminal {
    private Terminal() {}

    /** JDK 25 returns null where neither end is a terminal, whatever the check says. */
    @SuppressWarnings("SystemConsoleNull")
    static boolean there() {
        return System.console() != null && System.console().isTerminal();
    }
}
