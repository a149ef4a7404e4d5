package rigwarden.elsewhere;

import java.util.Locale;

/**
 * Something wrong with a line.
 *
 * @param line its number in the file, from 1
 * @param fault what kind
 * @param detail in words, what was found there
 */
public record Remark(long line, Fault fault, String detail) {
    /** One sentence with the line. */
    public String words() {
        return String.format(Locale.ROOT, "line %d: %s", line, detail);
    }
}
