package rigwarden.logbook;

/** The logbook cannot do what was asked; the message is a sentence for the operator. */
public final class LogbookException extends RuntimeException {
    private static final long serialVersionUID = 1;

    public LogbookException(String words) {
        super(words);
    }

    public LogbookException(String words, Throwable cause) {
        super(words + ": " + Sqlite.plain(cause), cause);
    }
}
