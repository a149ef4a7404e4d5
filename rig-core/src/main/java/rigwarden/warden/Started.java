package rigwarden.warden;

/** Whether an armed start was granted and nothing has ended it. */
public enum Started {
    NOT,
    /** By {@link Request#START}, or {@link Request#CONTINUE}. */
    USUAL,
    /** By {@link Request#RECOVER}: cells may be lower than any other start would bear, and get hardly any current. */
    RECOVERING;

    /** What these requests make of it while armed; a start that is on stays what it is. */
    Started with(Inbox inbox, boolean armed) {
        if (this != NOT || !armed) {
            return this;
        }
        boolean usual = inbox.has(Request.START) || inbox.has(Request.CONTINUE);
        return inbox.has(Request.RECOVER) ? RECOVERING : usual ? USUAL : NOT;
    }
}
