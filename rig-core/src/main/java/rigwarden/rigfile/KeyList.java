package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.tomlj.Toml;
import rigwarden.rig.Rig;

/**
 * Every key that a file may hold, as its reader asks for it. The reader itself is asked: it reads a file that nobody wrote,
 * and what it asks for is answered until it asks for nothing new, with every word that decides about other keys. So the list
 * cannot lack a key, or have one too many.
 */
public final class KeyList {
    private static final int MOST_ROUNDS = 200;

    /**
     * One key.
     *
     * @param name the key itself
     * @param optional whether it may be left out
     * @param allowed range with unit, words, or what it must be
     * @param why what it is for
     * @param onlyWith the word on which it depends; empty for a key that always belongs here
     */
    public record Key(String name, boolean optional, String allowed, String why, String onlyWith) {}

    /**
     * One table with its keys, in the order in which they are asked for.
     *
     * @param place its name with those around it; empty at the top of the file
     * @param many whether there may be more than one
     * @param optional whether it may be left out
     * @param why what it is for
     * @param keys the keys that are no tables themselves
     */
    public record Table(String place, boolean many, boolean optional, String why, List<Key> keys) {
        /** The table's heading as it stands in a file; empty at the top. */
        public String heading() {
            return place.isEmpty() ? "" : many ? "[[" + place + "]]" : "[" + place + "]";
        }
    }

    private KeyList() {}

    /** Keys of a rig file. */
    public static List<Table> ofRig() {
        return of((page, root) -> new RigKeys(page).sketch(root));
    }

    /** Keys of a programme for a rig: its sources and sinks are among the words. */
    public static List<Table> ofProgram(Rig rig) {
        return of((page, root) -> ProgramFile.keys(page, root, rig));
    }

    /** Keys of a file that is neither rig nor programme; as for {@link KeyFile#read}. */
    public static List<Table> of(Consumer<Keys> reader) {
        return of((_, root) -> {
            reader.accept(root);
            root.noOthers();
        });
    }

    static List<Table> of(BiConsumer<Page, Keys> reader) {
        Draft top = new Draft();
        Set<String> optional = new TreeSet<>();
        int round = 0;
        while (round(top, reader, optional, round)) {
            round++;
            if (round > MOST_ROUNDS) {
                throw new IllegalStateException("the reader asks without end");
            }
        }
        Map<String, List<Draft>> byPlace = new LinkedHashMap<>();
        top.collect("", byPlace);
        Map<String, Asked> headings = new LinkedHashMap<>();
        List<Table> tables = new ArrayList<>();
        byPlace.forEach((place, drafts) -> {
            Map<String, Asked> questions = questions(drafts);
            questions.values().stream().filter(KeyList::heads)
                    .forEach(q -> headings.put(place.isEmpty() ? q.key() : place + "." + q.key(), q));
            Asked heading = headings.get(place);
            tables.add(new Table(place, heading != null && heading.shape() == Asked.Shape.TABLES,
                    heading != null && optional.contains(id(heading)), heading == null ? "" : heading.why(),
                    keys(questions, drafts, optional)));
        });
        return List.copyOf(tables);
    }

    private static String id(Asked question) {
        return question.place() + "|" + question.key();
    }

    private static boolean heads(Asked question) {
        return question.shape() == Asked.Shape.TABLE || question.shape() == Asked.Shape.TABLES;
    }

    /** Reads the draft once and takes every question; returns whether there is more to be asked. */
    private static boolean round(Draft top, BiConsumer<Page, Keys> reader, Set<String> optional, int round) {
        List<Asked> questions = new ArrayList<>();
        Page page = new Page("draft", questions::add);
        reader.accept(page, new Keys(page, Toml.parse(top.toml(true))));
        boolean more = false;
        for (int i = 0; i < questions.size(); i++) {
            Asked question = questions.get(i);
            if (question.shape() == Asked.Shape.PRESENCE) {
                optional.add(id(question));
            }
            Optional<Draft> table = nested(question) ? Optional.empty() : top.find(question.label());
            more |= table.isPresent() && table.get().take(question, "n" + round + "_" + i);
        }
        return top.spread() || more;
    }

    /** Whether a table holds itself, as a repeat does: once is enough. */
    private static boolean nested(Asked question) {
        return ("." + question.place()).endsWith("." + question.key()) && question.shape() == Asked.Shape.TABLES;
    }

    /** What is asked for in tables of one place, each key once. */
    private static Map<String, Asked> questions(List<Draft> drafts) {
        Map<String, Asked> all = new LinkedHashMap<>();
        for (Draft draft : drafts) {
            for (Asked question : draft.asked()) {
                all.merge(question.key(), question, Asked::and);
            }
        }
        return all;
    }

    private static List<Key> keys(Map<String, Asked> questions, List<Draft> drafts, Set<String> optional) {
        List<Key> keys = new ArrayList<>();
        for (Asked question : questions.values()) {
            if (!heads(question)) {
                keys.add(new Key(question.key(), optional.contains(id(question)), question.allowed(), question.why(),
                        onlyWith(question.key(), drafts)));
            }
        }
        return List.copyOf(keys);
    }

    /** The one word whose value tells in which tables this key is asked for. */
    private static String onlyWith(String key, List<Draft> drafts) {
        Set<Draft> with = drafts.stream().filter(d -> d.asked().stream().anyMatch(q -> q.key().equals(key)))
                .collect(Collectors.toSet());
        if (with.size() == drafts.size()) {
            return "";
        }
        Set<String> words = drafts.stream().flatMap(d -> d.words().keySet().stream())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        for (String word : words) {
            Set<String> inside = values(word, drafts, with, true);
            Set<String> outside = values(word, drafts, with, false);
            if (outside.stream().noneMatch(inside::contains)) {
                boolean most = inside.size() > outside.size() && !outside.contains("");
                return most ? word + " other than " + String.join(", ", outside) : word + " = " + String.join(", ", inside);
            }
        }
        return "";
    }

    private static Set<String> values(String word, List<Draft> drafts, Set<Draft> with, boolean inside) {
        return drafts.stream().filter(d -> with.contains(d) == inside).map(d -> d.words().getOrDefault(word, ""))
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
