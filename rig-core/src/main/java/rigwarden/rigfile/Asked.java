package rigwarden.rigfile;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * One question that a reader asks of a file.
 *
 * @param label table in which it is asked, as refusals name it
 * @param place the same without the names of single tables: {@code adc.input}; empty at the top
 * @param key what is asked for
 * @param shape what kind of answer is wanted
 * @param allowed the answer's range or words; for a list or a table, what it must be
 * @param words the known words, where it is one of a few
 * @param low lowest number, where it is one
 * @param why what the answer is for
 */
record Asked(String label, String place, String key, Shape shape, String allowed, List<String> words, double low, String why) {
    /** Kinds of answer; {@code PRESENCE} only asks whether the key is there, which makes it one that may be left out. */
    enum Shape { PRESENCE, NUMBER, WHOLE, YES_OR_NO, TEXT, WORD, WORDS, TEXTS, TABLE, TABLES }

    /** The same question asked in another table of this place: the more telling of the two, with the words of both. */
    Asked and(Asked other) {
        if (shape == Shape.PRESENCE || other.shape == Shape.PRESENCE) {
            return shape == Shape.PRESENCE ? other : this;
        }
        if (shape != Shape.WORD) {
            return this;
        }
        Set<String> all = new LinkedHashSet<>(words);
        all.addAll(other.words);
        return new Asked(label, place, key, shape, String.join(", ", all), List.copyOf(all), low, why);
    }
}
