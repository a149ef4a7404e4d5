package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** One table of a file that nobody wrote: it answers whatever a reader asks, so that the reader asks on. */
final class Draft {
    private final Map<String, Asked> asked = new LinkedHashMap<>();
    private final Map<String, String> answers = new LinkedHashMap<>();
    private final Map<String, List<Draft>> inner = new LinkedHashMap<>();
    /** Words that decide what else is asked. */
    private final Map<String, String> words = new LinkedHashMap<>();

    /** What was asked of this table, each key once, by its most telling question. */
    List<Asked> asked() {
        return List.copyOf(asked.values());
    }

    Map<String, String> words() {
        return words;
    }

    /** The table that refusals would call by this name, here or further in. */
    Optional<Draft> find(String label) {
        return find(label, "");
    }

    private Optional<Draft> find(String label, String own) {
        if (label.equals(own)) {
            return Optional.of(this);
        }
        for (Map.Entry<String, List<Draft>> entry : inner.entrySet()) {
            boolean list = asked.get(entry.getKey()).shape() == Asked.Shape.TABLES;
            for (int i = 0; i < entry.getValue().size(); i++) {
                Draft table = entry.getValue().get(i);
                String key = own.isEmpty() ? entry.getKey() : own + "." + entry.getKey();
                String item = table.answers.containsKey("name") ? unquoted(table.answers.get("name")) : String.valueOf(i + 1);
                Optional<Draft> found = table.find(label, list ? key + "." + item : key);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private static String unquoted(String text) {
        return text.substring(1, text.length() - 1);
    }

    /**
     * Takes a question and answers it from the next time on. Whole numbers are answered wrongly: in a file that is refused
     * anyway no reader makes one key's range depend on another key.
     *
     * @param fresh a name that no other thing has
     * @return whether anything is new
     */
    boolean take(Asked question, String fresh) {
        String key = question.key();
        Asked before = asked.get(key);
        boolean telling = before == null || before.shape() == Asked.Shape.PRESENCE && question.shape() != Asked.Shape.PRESENCE;
        if (!telling) {
            return false;
        }
        asked.put(key, question);
        switch (question.shape()) {
            case PRESENCE -> answers.put(key, "0");
            case NUMBER -> answers.put(key, Double.toString(question.low()));
            case WHOLE -> answers.put(key, Long.toString((long) question.low() - 1));
            case TEXT -> answers.put(key, '"' + fresh + '"');
            case TEXTS, WORDS -> answers.put(key, "[]");
            case YES_OR_NO -> word(key, "true");
            case WORD -> word(key, question.words().getFirst());
            case TABLE, TABLES -> {
                answers.remove(key);
                inner.computeIfAbsent(key, _ -> new ArrayList<>(List.of(new Draft())));
            }
        }
        return true;
    }

    private void word(String key, String usual) {
        String chosen = words.computeIfAbsent(key, _ -> usual);
        answers.put(key, chosen.equals("true") || chosen.equals("false") ? chosen : '"' + chosen + '"');
    }

    /** Lays a table beside each listed one for every other word that it could hold; returns whether there were any. */
    boolean spread() {
        boolean more = false;
        for (Map.Entry<String, List<Draft>> entry : inner.entrySet()) {
            List<Draft> list = entry.getValue();
            if (asked.get(entry.getKey()).shape() == Asked.Shape.TABLES) {
                for (Draft one : List.copyOf(list)) {
                    more |= one.others(list);
                }
            }
            for (Draft one : list) {
                more |= one.spread();
            }
        }
        return more;
    }

    private boolean others(List<Draft> list) {
        boolean more = false;
        for (String key : words.keySet().stream().filter(asked::containsKey).toList()) {
            Asked question = asked.get(key);
            List<String> choices = question.shape() == Asked.Shape.YES_OR_NO ? List.of("true", "false") : question.words();
            for (String choice : choices) {
                Map<String, String> wanted = new LinkedHashMap<>();
                for (Map.Entry<String, String> word : words.entrySet()) {
                    if (word.getKey().equals(key)) {
                        wanted.put(key, choice);
                        break;
                    }
                    wanted.put(word.getKey(), word.getValue());
                }
                if (list.stream().noneMatch(draft -> draft.words.entrySet().containsAll(wanted.entrySet()))) {
                    Draft other = new Draft();
                    wanted.forEach(other::word);
                    list.add(other);
                    more = true;
                }
            }
        }
        return more;
    }

    /** Every table of one place, this one included. */
    void collect(String place, Map<String, List<Draft>> byPlace) {
        byPlace.computeIfAbsent(place, _ -> new ArrayList<>()).add(this);
        inner.forEach((key, list) ->
                list.forEach(draft -> draft.collect(place.isEmpty() ? key : place + "." + key, byPlace)));
    }

    /** The table as TOML, in one line within braces; at the top, one line for each key. */
    String toml(boolean top) {
        List<String> parts = new ArrayList<>();
        answers.forEach((key, answer) -> parts.add(key + " = " + answer));
        inner.forEach((key, list) -> {
            String tables = list.stream().map(draft -> draft.toml(false)).collect(Collectors.joining(", "));
            parts.add(key + " = " + (asked.get(key).shape() == Asked.Shape.TABLES ? "[" + tables + "]" : tables));
        });
        return top ? String.join("\n", parts) : "{" + String.join(", ", parts) + "}";
    }
}
