package rigwarden.elsewhere;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import rigwarden.program.Ended;
import rigwarden.rigfile.Keys;
import rigwarden.rigfile.RefusalKind;

/** The keys that say what the steps of a log were. */
final class StretchKeys {
    private static final List<String> KINDS = List.of("rest", "charge", "discharge", "heat_run", "pulse", "balance", "park");
    /** Those that a log can show or a person can know; of the others only a rig of ours speaks. */
    private static final List<Ended> ENDS = List.of(Ended.CUT_OFF, Ended.CEILING, Ended.TAPER, Ended.TIME, Ended.CHARGER, Ended.SINK,
            Ended.PROTECTION, Ended.STOPPED);

    private StretchKeys() {}

    /** Exactly one of two tables says it. */
    static Stretches read(Keys keys) {
        boolean named = keys.has("steps");
        boolean shown = keys.has("rest");
        Optional<Stretches> column = named ? keys.table("steps", "a column tells where one step ends and the next begins, and what each was")
                .map(StretchKeys::byColumn) : Optional.empty();
        Optional<Stretches> current = shown ? keys.table("rest", "instead of [steps]: the current alone tells charge, discharge and rest apart")
                .map(StretchKeys::byCurrent) : Optional.empty();
        if (named && shown) {
            keys.refuse(RefusalKind.SAME_NAME, "rest", "[steps] or [rest], not both", "a step cannot end at two places", "");
        } else if (!named && !shown) {
            keys.refuse(RefusalKind.MISSING_KEY, "steps", "[steps] or [rest]", "what the findings say depends on what the steps were", "Add one of them.");
        }
        return column.or(() -> current).orElse(new Stretches.ByCurrent(1));
    }

    private static Stretches byColumn(Keys keys) {
        Stretches read = new Stretches.ByColumn(keys.text("column", "each time it changes a step ends"), known(keys));
        keys.noOthers();
        return read;
    }

    private static Stretches byCurrent(Keys keys) {
        Stretches read = new Stretches.ByCurrent(Math.max(1e-9, keys.number("below_a", "A", 1e-9, 100, "less, either way, is rest")));
        keys.noOthers();
        return read;
    }

    private static List<Stretches.Stretch> known(Keys keys) {
        List<Stretches.Stretch> known = new ArrayList<>();
        Set<String> values = new TreeSet<>();
        for (Keys one : keys.tables("stretch", RefusalKind.MISSING_KEY, "a step whose meaning nobody states is in no finding")) {
            Stretches.Stretch stretch = new Stretches.Stretch(
                    one.texts("values", "of the column, in quotes"),
                    one.word("kind", KINDS, "each finding asks for certain kinds of steps"),
                    Ended.valueOf(one.word("ended_by", ENDS.stream().map(Ended::word).toList(),
                            "a capacity counts from full to the cut-off; stopped where nobody knows").toUpperCase(Locale.ROOT)));
            for (String value : stretch.values()) {
                if (!values.add(value)) {
                    one.refuse(RefusalKind.SAME_NAME, "values", "each value in one stretch", "a step cannot mean two things", "");
                }
            }
            one.noOthers();
            known.add(stretch);
        }
        return known;
    }
}
