package rigwarden.page;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * All that changes on the area Now, ready to be shown: what the stream sends and what a page without script shows are the
 * same words.
 *
 * @param number of the scan that it was made from
 * @param words text by element
 * @param marks state by element, for the style sheet
 * @param parts drawn markup by element
 */
record View(long number, Map<String, String> words, Map<String, String> marks, Map<String, String> parts) {
    static final View NOTHING = new View(0, Map.of(), Map.of(), Map.of());

    /** What is different from an earlier view. */
    View since(View before) {
        return new View(number, changed(words, before.words), changed(marks, before.marks),
                changed(parts, before.parts));
    }

    private static Map<String, String> changed(Map<String, String> now, Map<String, String> before) {
        Map<String, String> changed = new LinkedHashMap<>();
        now.forEach((id, value) -> {
            if (!value.equals(before.get(id))) {
                changed.put(id, value);
            }
        });
        return changed;
    }

    boolean empty() {
        return words.isEmpty() && marks.isEmpty() && parts.isEmpty();
    }

    String word(String id) {
        return words.getOrDefault(id, "");
    }

    String mark(String id) {
        return marks.getOrDefault(id, "");
    }

    String part(String id) {
        return parts.getOrDefault(id, "");
    }
}
