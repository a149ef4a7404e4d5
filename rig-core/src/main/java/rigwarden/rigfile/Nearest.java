package rigwarden.rigfile;

import java.util.Collection;
import java.util.Comparator;

/** The known word that a mistyped one probably means. */
final class Nearest {
    private static final int FARTHEST = 3;

    private Nearest() {}

    /** A question that names the nearest word, or the list of all. */
    static String question(String mistyped, Collection<String> known) {
        return known.stream()
                .filter(word -> distance(mistyped, word) <= Math.min(FARTHEST, word.length() / 2))
                .min(Comparator.comparingInt((String word) -> distance(mistyped, word)).thenComparing(word -> word))
                .map(word -> "Did you mean " + word + "?")
                .orElse("Remove it.");
    }

    /** Letters to insert, delete or replace (Levenshtein). */
    private static int distance(String left, String right) {
        int[] before = new int[right.length() + 1];
        for (int j = 0; j <= right.length(); j++) {
            before[j] = j;
        }
        for (int i = 1; i <= left.length(); i++) {
            int[] now = new int[right.length() + 1];
            now[0] = i;
            for (int j = 1; j <= right.length(); j++) {
                int replaced = before[j - 1] + (left.charAt(i - 1) == right.charAt(j - 1) ? 0 : 1);
                now[j] = Math.min(replaced, Math.min(before[j], now[j - 1]) + 1);
            }
            before = now;
        }
        return before[right.length()];
    }
}
