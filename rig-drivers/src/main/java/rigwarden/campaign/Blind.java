package rigwarden.campaign;

import java.util.Map;

/** Why a kind of fault may not be noticed. One list; a kind without an entry is a question that nobody has answered yet. */
final class Blind {
    private static final Map<String, String> REASONS = Map.of();

    private Blind() {}

    static String why(String kind) {
        return REASONS.getOrDefault(kind, "no reason known");
    }
}
