package rigwarden.notice;

import java.util.regex.Pattern;

/** Why something failed, short, on one line. */
final class Reason {
    private static final int LONGEST = 160;
    private static final Pattern CONTROL = Pattern.compile("\\p{Cntrl}+");

    private Reason() {}

    static String of(Throwable thrown) {
        Throwable deepest = thrown;
        while (deepest.getCause() != null) {
            deepest = deepest.getCause();
        }
        String message = deepest.getMessage();
        String kind = deepest.getClass().getSimpleName();
        String said = message == null || message.isBlank() ? kind : kind + ", " + CONTROL.matcher(message).replaceAll(" ").strip();
        return said.length() <= LONGEST ? said : said.substring(0, LONGEST) + "…";
    }
}
