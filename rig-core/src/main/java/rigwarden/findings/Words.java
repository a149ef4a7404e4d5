package rigwarden.findings;

import java.util.Locale;

/** Formats alike everywhere, whatever the machine's language. */
final class Words {
    private Words() {}

    static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    static String step(StepFinding step) {
        return say("step %d, %s", step.index(), step.kind().replace('_', ' '));
    }
}
