package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * The keys of one table. Every question for a key that is missing or wrong adds a refusal and returns something
 * harmless, which ends up nowhere: a file with a refusal never becomes a rig.
 */
public final class Keys {
    private static final double THOUSAND = 1000;

    private final Page page;
    private final TomlTable table;
    private final String prefix;
    private final String place;
    private final Set<String> asked = new LinkedHashSet<>();
    private final Set<String> bad = new LinkedHashSet<>();
    /** Once a word that decides about other keys is not understood, nobody can say which of them belong here. */
    private boolean unclear;

    /** The keys at the top of a file. */
    Keys(Page page, TomlTable table) {
        this(page, table, "", "");
    }

    private Keys(Page page, TomlTable table, String prefix, String place) {
        this.page = page;
        this.table = table;
        this.prefix = prefix;
        this.place = place;
        for (String key : table.keySet()) {
            Object value = table.get(List.of(key));
            String text = value instanceof TomlTable || value instanceof TomlArray ? "" : String.valueOf(value);
            page.seen(full(key), line(table.inputPositionOf(List.of(key))), text);
        }
    }

    private static int line(TomlPosition position) {
        return position == null ? 0 : position.line();
    }

    /** Full name of a key of this table. */
    String full(String key) {
        return prefix.isEmpty() ? key : prefix + "." + key;
    }

    /** Whether a key was asked for and gave rise to no refusal. */
    public boolean good(String key) {
        return asked.contains(key) && !bad.contains(key);
    }

    private void refuse(RefusalKind kind, String key, String found, String allowed, String why, String whatToDo) {
        bad.add(key);
        page.refuse(kind, full(key), found, allowed, why, whatToDo);
    }

    /** Refuses what is written at a key of this table. */
    public void refuse(RefusalKind kind, String key, String allowed, String why, String whatToDo) {
        refuse(kind, key, page.text(full(key)), allowed, why, whatToDo);
    }

    /** A key that is missing; nothing is said where nobody can know that it belongs here. */
    private void missing(RefusalKind kind, String key, String allowed, String why) {
        bad.add(key);
        if (!unclear) {
            page.refuse(kind, full(key), Refusal.NOTHING, allowed, why, "Add it.");
        }
    }

    /** Whether a key that may be left out is there. */
    public boolean has(String key) {
        asks(key, Asked.Shape.PRESENCE, "", List.of(), 0, "");
        return present(key);
    }

    private boolean present(String key) {
        asked.add(key);
        return table.contains(List.of(key));
    }

    private void asks(String key, Asked.Shape shape, String allowed, Collection<String> words, double low, String why) {
        page.asks(new Asked(prefix, place, key, shape, allowed, List.copyOf(words), low, why));
    }

    /** Says that this number would be asked for if another key were not there. */
    void offers(String key, String unit, double lowest, double highest, String why) {
        asks(key, Asked.Shape.NUMBER, Figures.range(lowest, highest, unit), List.of(), lowest, why);
    }

    /** A number in its unit, both ends allowed. */
    public double number(String key, String unit, double lowest, double highest, String why) {
        return number(key, RefusalKind.MISSING_KEY, unit, lowest, highest, why);
    }

    /** A number whose absence has a kind of refusal of its own. */
    double number(String key, RefusalKind whenMissing, String unit, double lowest, double highest, String why) {
        asks(key, Asked.Shape.NUMBER, Figures.range(lowest, highest, unit), List.of(), lowest, why);
        Object value = value(key, whenMissing, Figures.range(lowest, highest, unit), why);
        if (value == null) {
            return lowest;
        }
        if (!(value instanceof Number number)) {
            return refuseType(key, Figures.range(lowest, highest, unit), why, lowest);
        }
        return within(key, number.doubleValue(), unit, lowest, highest, why);
    }

    /** A whole number in its unit, both ends allowed. */
    public int whole(String key, String unit, int lowest, int highest, String why) {
        return whole(key, RefusalKind.MISSING_KEY, unit, lowest, highest, why);
    }

    /** A whole number whose absence has a kind of refusal of its own. */
    int whole(String key, RefusalKind whenMissing, String unit, int lowest, int highest, String why) {
        asks(key, Asked.Shape.WHOLE, Figures.range(lowest, highest, unit), List.of(), lowest, why);
        Object value = value(key, whenMissing, Figures.range(lowest, highest, unit), why);
        if (value == null) {
            return lowest;
        }
        if (!(value instanceof Long number)) {
            return (int) refuseType(key, "a whole number, " + Figures.range(lowest, highest, unit), why, lowest);
        }
        return (int) within(key, number, unit, lowest, highest, why);
    }

    private double within(String key, double value, String unit, double lowest, double highest, String why) {
        if (value >= lowest && value <= highest) {
            return value;
        }
        for (double meant : new double[] {value / THOUSAND, value * THOUSAND}) {
            if (meant >= lowest && meant <= highest && meant != 0 && !unit.isEmpty()) {
                refuse(RefusalKind.UNIT_MISTAKE, key, page.text(full(key)), Figures.range(lowest, highest, unit), why,
                        "Did you mean " + Figures.of(meant, unit) + "?");
                return lowest;
            }
        }
        refuse(RefusalKind.OUT_OF_RANGE, key, page.text(full(key)), Figures.range(lowest, highest, unit), why, "");
        return lowest;
    }

    /** True or false. */
    public boolean yesOrNo(String key, String why) {
        asks(key, Asked.Shape.YES_OR_NO, "true or false", List.of(), 0, why);
        Object value = value(key, RefusalKind.MISSING_KEY, "true or false", why);
        if (value instanceof Boolean yes) {
            return yes;
        }
        return value != null && refuseType(key, "true or false", why, 0) > 0;
    }

    /** A text of at most 80 letters. */
    public String text(String key, String why) {
        return text(key, 80, why);
    }

    /** A text of at most so many letters. */
    public String text(String key, int most, String why) {
        asks(key, Asked.Shape.TEXT, "a text in quotes", List.of(), 0, why);
        Object value = value(key, RefusalKind.MISSING_KEY, "a text in quotes", why);
        if (value instanceof String text && text.chars().anyMatch(Character::isISOControl)) {
            refuse(RefusalKind.TEXT_UNREADABLE, key, "a text with a line end or a control sign", "letters and signs", why,
                    "Type it again.");
            return "";
        }
        if (value instanceof String text && !text.isBlank() && text.length() <= most) {
            return text;
        }
        if (value != null) {
            refuseType(key, "a text of 1 to " + most + " letters in quotes", why, 0);
        }
        return "";
    }

    /** One of the known words. */
    public String word(String key, Collection<String> known, String why) {
        String allowed = String.join(", ", known);
        asks(key, Asked.Shape.WORD, allowed, known, 0, why);
        Object value = value(key, RefusalKind.MISSING_KEY, allowed, why);
        if (value instanceof String word) {
            checkWord(key, word, known, why);
            unclear |= !known.contains(word);
            return known.contains(word) ? word : known.iterator().next();
        }
        if (value != null) {
            refuseType(key, allowed, why, 0);
        }
        unclear = true;
        return known.iterator().next();
    }

    /** A list of known words. */
    public List<String> words(String key, Collection<String> known, String why) {
        List<String> words = new ArrayList<>();
        String allowed = "a list of " + String.join(", ", known);
        asks(key, Asked.Shape.WORDS, allowed, known, 0, why);
        Object value = value(key, RefusalKind.MISSING_KEY, allowed, why);
        if (value instanceof TomlArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i) instanceof String word) {
                    checkWord(key, word, known, why);
                    words.add(word);
                } else {
                    refuseType(key, "a list of texts in quotes", why, 0);
                }
            }
        } else if (value != null) {
            refuseType(key, "a list of texts in quotes", why, 0);
        }
        return List.copyOf(words);
    }

    /** A list of names. */
    public List<String> texts(String key, String why) {
        List<String> texts = new ArrayList<>();
        asks(key, Asked.Shape.TEXTS, "a list of texts in quotes", List.of(), 0, why);
        Object value = value(key, RefusalKind.MISSING_KEY, "a list of texts in quotes", why);
        if (value instanceof TomlArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i) instanceof String text) {
                    texts.add(text);
                } else {
                    refuseType(key, "a list of texts in quotes", why, 0);
                }
            }
        } else if (value != null) {
            refuseType(key, "a list of texts in quotes", why, 0);
        }
        return List.copyOf(texts);
    }

    private void checkWord(String key, String word, Collection<String> known, String why) {
        if (!known.contains(word)) {
            refuse(RefusalKind.UNKNOWN_WORD, key, word, String.join(", ", known), why,
                    Nearest.question(word, known));
        }
    }

    /** A table inside this one; empty with a refusal where it is missing. */
    public Optional<Keys> table(String key, String why) {
        asks(key, Asked.Shape.TABLE, "a table", List.of(), 0, why);
        Object value = value(key, RefusalKind.MISSING_KEY, "a table", why);
        if (value instanceof TomlTable inner) {
            return Optional.of(new Keys(page, inner, full(key), inside(key)));
        }
        if (value != null) {
            refuseType(key, "a table", why, 0);
        }
        return Optional.empty();
    }

    /** Stands in for a table that was refused: its own refusals go nowhere. */
    Keys none() {
        return new Keys(new Page(""), Toml.parse(""));
    }

    /** The tables of a list, each with its name, or its place where it has none, as its prefix. */
    public List<Keys> tables(String key, RefusalKind whenMissing, String why) {
        List<Keys> found = new ArrayList<>();
        Set<String> names = new LinkedHashSet<>();
        asks(key, Asked.Shape.TABLES, "tables [[" + inside(key) + "]]", List.of(), 0, why);
        Object value = value(key, whenMissing, "at least one table [[" + key + "]]", why);
        if (value instanceof TomlArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.get(i) instanceof TomlTable inner) {
                    Object name = inner.get(List.of("name"));
                    boolean fresh = name instanceof String text && !text.isBlank() && names.add(text);
                    String label = full(key) + "." + (fresh ? name : String.valueOf(i + 1));
                    page.seen(label, line(array.inputPositionOf(i)), "");
                    found.add(new Keys(page, inner, label, inside(key)));
                } else {
                    refuseType(key, "tables [[" + key + "]]", why, 0);
                }
            }
        } else if (value != null) {
            refuseType(key, "tables [[" + key + "]]", why, 0);
        }
        return found;
    }

    private String inside(String key) {
        return place.isEmpty() ? key : place + "." + key;
    }

    private Object value(String key, RefusalKind whenMissing, String allowed, String why) {
        if (!present(key)) {
            missing(whenMissing, key, allowed, why);
            return null;
        }
        return table.get(List.of(key));
    }

    private double refuseType(String key, String allowed, String why, double harmless) {
        Object value = table.get(List.of(key));
        String found = value instanceof String ? "\"" + value + "\"" : page.text(full(key));
        refuse(RefusalKind.WRONG_TYPE, key, found.isEmpty() ? "a list or table" : found, allowed, why, "");
        return harmless;
    }

    /** Refuses every key that nobody asked for. */
    public void noOthers() {
        for (String key : table.keySet()) {
            if (!asked.contains(key) && !unclear) {
                page.refuse(RefusalKind.UNKNOWN_KEY, full(key), "one of " + String.join(", ", asked),
                        "a mistyped key would silently do nothing", Nearest.question(key, asked));
            }
        }
    }

    Page page() {
        return page;
    }
}
