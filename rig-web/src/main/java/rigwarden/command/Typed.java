package rigwarden.command;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** A number as a person types it off a meter. */
final class Typed {
    /** What to say when it was none. */
    static final String HOW = "That is no number. Type it with a point and without its unit, as 12.345.";

    private static final Pattern NUMBER = Pattern.compile("[+−-]?\\d{1,6}([.]\\d{1,9})?");

    private Typed() {}

    /** The number; nothing for a comma, a unit, or anything else of which nobody can be sure. */
    static OptionalDouble number(String text) {
        String bare = text.strip();
        return NUMBER.matcher(bare).matches()
                ? OptionalDouble.of(Double.parseDouble(bare.replace('−', '-')))
                : OptionalDouble.empty();
    }
}
