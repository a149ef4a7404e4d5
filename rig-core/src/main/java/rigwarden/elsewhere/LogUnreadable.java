package rigwarden.elsewhere;

/** A log cannot be brought in; the message is a sentence for a person. */
public final class LogUnreadable extends RuntimeException {
    private static final long serialVersionUID = 1;

    public LogUnreadable(String words) {
        super(words);
    }

    LogUnreadable(String words, Throwable cause) {
        super(words + ": " + cause.getMessage(), cause);
    }
}
