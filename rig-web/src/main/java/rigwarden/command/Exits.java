package rigwarden.command;

/** Exit codes of every command. */
final class Exits {
    static final int DONE = 0;
    static final int DEFECT = 1;
    static final int REFUSED = 2;
    static final int TRIPPED = 3;
    static final int STOPPED = 4;
    static final int CUT = 5;

    private Exits() {}
}
