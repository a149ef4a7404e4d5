package rigwarden.rigfile;

import java.util.regex.Pattern;

/**
 * One thing that is wrong with a file: where, what, what would be right, why, and what to do.
 *
 * @param kind numbered kind
 * @param file name of the file as the person gave it
 * @param line line in it, from 1; 0 where no line can be named
 * @param key full key, for example {@code cell.ceiling_v}; empty where the whole file is meant
 * @param found what stands there, with its unit
 * @param allowed what may stand there, with its unit
 * @param why reason of the limit, a clause that follows "because"
 * @param whatToDo a sentence or question; empty where the allowed value says it all
 */
public record Refusal(
        RefusalKind kind,
        String file,
        int line,
        String key,
        String found,
        String allowed,
        String why,
        String whatToDo) {
    /** What is found where a key is missing. */
    static final String NOTHING = "nothing";

    /** Quoted keys and texts may hold line ends and worse; a refusal stays one line. */
    private static final Pattern CONTROL = Pattern.compile("\\p{Cntrl}");

    /** Number as printed, for example {@code R08}. */
    public String number() {
        return kind.number();
    }

    /** Everything in one line for a person. */
    public String print() {
        StringBuilder text = new StringBuilder(80).append(file);
        if (line > 0) {
            text.append(':').append(line);
        }
        text.append(": ").append(key);
        if (!found.isEmpty()) {
            boolean missing = found.equals(NOTHING);
            text.append(key.isEmpty() || missing ? "" : " = ").append(missing ? " is missing" : found);
        }
        text.append(": allowed ").append(allowed).append(", because ").append(why).append('.');
        if (!whatToDo.isEmpty()) {
            text.append(' ').append(whatToDo);
        }
        return CONTROL.matcher(text.append(" [").append(number()).append(']')).replaceAll("·");
    }
}
