package rigwarden.bus;

import rigwarden.warden.Failure;

/** A transaction or a check that gave no value. It is an ordinary event on a bench, so it carries no stack trace. */
public final class BusFailure extends Exception {
    private static final long serialVersionUID = 1L;

    private final Failure why;
    private final Trouble trouble;

    /**
     * Makes a failure.
     *
     * @param why what the channel shall say
     * @param text which part, what was found, what was expected
     */
    public BusFailure(Failure why, String text) {
        this(why, Trouble.UNNAMED, text);
    }

    /** A failure of a transfer, with the kernel's reason. */
    BusFailure(Failure why, Trouble trouble, String text) {
        super(text, null, false, false);
        this.why = why;
        this.trouble = trouble;
    }

    /** The kernel's reason, where there is one. */
    public Trouble trouble() {
        return trouble;
    }

    public Failure why() {
        return why;
    }
}
