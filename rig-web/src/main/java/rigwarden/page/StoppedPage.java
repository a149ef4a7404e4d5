package rigwarden.page;

/** The answer to STOP; it looks again until all is over. */
final class StoppedPage {
    private static final String AGAIN = "<meta http-equiv=\"refresh\" content=\"2; url=/stop\">";

    private StoppedPage() {}

    static String of(Shell shell, String told, boolean again) {
        return shell.page(Shell.Area.NOW, "Stop", again ? AGAIN : "", "<section class=\"stopped\">" + told + "</section>");
    }
}
