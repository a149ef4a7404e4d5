package rigwarden.command;

/** Something that a person asked for and cannot have; its message is all that is shown. */
final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Refused(String sentence) {
        super(sentence, null, false, false);
    }
}
