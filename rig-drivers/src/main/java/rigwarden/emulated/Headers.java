package rigwarden.emulated;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * SCPI headers in their short form. Only exactly the short or exactly the long form of a word counts, whatever its case
 * (SCPI-1999 volume 1, 6.2.1).
 */
final class Headers {
    private static final String[] LONG = {
        "SYSTEM", "ERROR", "NEXT", "VERSION", "SOURCE", "VOLTAGE", "CURRENT", "PROTECTION", "OUTPUT", "INPUT", "MEASURE"
    };
    private static final Map<String, String> WORDS = words();
    private static final int REMEMBERED = 64;
    private static final Map<String, String> KNOWN = new HashMap<>();

    private Headers() {}

    private static Map<String, String> words() {
        Map<String, String> words = new HashMap<>();
        for (String word : LONG) {
            String shorter = shortForm(word);
            words.put(word, shorter);
            words.put(shorter, shorter);
        }
        return words;
    }

    /** First four letters, or three where the fourth is a vowel; a word of four letters or fewer is its own short form. */
    static String shortForm(String word) {
        if (word.length() <= 4) {
            return word;
        }
        return word.substring(0, "AEIOU".indexOf(word.charAt(3)) >= 0 ? 3 : 4);
    }

    /** The header with each word in its short form; an unknown word makes it no header at all, an empty text. */
    static synchronized String shortened(String header) {
        String known = KNOWN.get(header);
        if (known != null) {
            return known;
        }
        boolean query = header.endsWith("?");
        StringBuilder result = new StringBuilder();
        for (String word : (query ? header.substring(0, header.length() - 1) : header).split(":", -1)) {
            String found = WORDS.get(word.toUpperCase(Locale.ROOT));
            if (found == null) {
                return "";
            }
            result.append(result.isEmpty() ? "" : ":").append(found);
        }
        String whole = result + (query ? "?" : "");
        if (KNOWN.size() < REMEMBERED) {
            KNOWN.put(header, whole);
        }
        return whole;
    }
}
