package rigwarden.findings;

import java.util.List;
import java.util.stream.Stream;

/**
 * A computed result with what makes it trustworthy or not.
 *
 * @param kind what is found
 * @param about of what, for example "step 3, discharge" or "cell 5"
 * @param answer what it comes to
 * @param conditions under which it was measured, in words
 * @param notes what a reader must know besides
 * @param firstScan first scan that it came from
 * @param lastScan last scan that it came from
 */
public record Finding(Kind kind, String about, Answer answer, List<String> conditions, List<String> notes, long firstScan,
        long lastScan) {
    public Finding {
        conditions = List.copyOf(conditions);
        notes = List.copyOf(notes);
    }

    /** The same with these conditions behind its own. */
    Finding at(List<String> more) {
        return new Finding(kind, about, answer, Stream.concat(conditions.stream(), more.stream()).toList(), notes, firstScan, lastScan);
    }
}
