package rigwarden.elsewhere;

import java.util.List;
import java.util.Optional;
import rigwarden.program.Ended;

/** How the steps of a log are told apart. */
public sealed interface Stretches {
    /**
     * A column says so: each time it changes a step ends.
     *
     * @param column its name
     * @param known what its values mean; a value that is not there belongs to no step
     */
    record ByColumn(String column, List<Stretch> known) implements Stretches {
        public ByColumn {
            known = List.copyOf(known);
        }
    }

    /**
     * The current says so: a step is a time of charge, of discharge, or of rest. What ended each nobody states, so that its
     * last row must show it.
     *
     * @param restBelowAmps less than that is rest, A, magnitude
     */
    record ByCurrent(double restBelowAmps) implements Stretches {}

    /**
     * Steps of one meaning.
     *
     * @param values of the column
     * @param kind our word for the step
     * @param by what ended each; believed only where its last row shows it
     */
    record Stretch(List<String> values, String kind, Ended by) {
        public Stretch {
            values = List.copyOf(values);
        }
    }

    /** The column that must be there, if one must. */
    default Optional<String> needs() {
        return switch (this) {
            case ByColumn by -> Optional.of(by.column());
            case ByCurrent _ -> Optional.empty();
        };
    }
}
