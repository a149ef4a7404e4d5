package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;

/**
 * What a person asks of a discharge first, put together: how much, limited by whom, and whether that is what was promised.
 *
 * @param capacity that it gave, with its conditions
 * @param refused why its charge cannot be told; empty where it can
 * @param limiting which cell met its cut-off, or why that is not said
 * @param verdict against the rating
 * @param rating that it was held against
 * @param series cells in series
 */
public record Headline(Capacity capacity, String refused, Answer limiting, Answer verdict, Rating rating, int series) {
    /** One for each discharge of a run, in order, from what was found of it. */
    public static List<Headline> of(Gathered run, List<Capacity> capacities, List<Finding> found, Rating rating, int series) {
        List<Headline> all = new ArrayList<>();
        for (Capacity capacity : capacities) {
            StepNotes step = run.steps().stream().filter(s -> s.sums().index() == capacity.step()).findFirst().orElseThrow();
            all.add(new Headline(capacity, Charge.refusal(step), answer(found, Kind.LIMITING_CELL, Words.step(step.sums())),
                    answer(found, Kind.VERDICT, Words.step(step.sums())), rating, series));
        }
        return List.copyOf(all);
    }

    private static Answer answer(List<Finding> found, Kind kind, String about) {
        return found.stream().filter(f -> f.kind() == kind && f.about().equals(about)).map(Finding::answer).findFirst().orElseThrow();
    }
}
