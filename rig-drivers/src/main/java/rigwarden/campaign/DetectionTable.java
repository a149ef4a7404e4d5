package rigwarden.campaign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rigwarden.campaign.Injection.Band;
import rigwarden.campaign.Outcome.Noticed;

/** How often a fault was noticed, by its size, from single faults alone; and which were not although they were large. */
final class DetectionTable {
    private DetectionTable() {}

    static List<String> of(List<Outcome> all) {
        List<Outcome> singles = all.stream().filter(o -> o.what().single()).toList();
        List<String> lines = new ArrayList<>(List.of("",
                "Noticed of single faults (tripped, or notice), by size against the limit of the kind; beside it those after which the run only went another way:",
                String.format("  %-10s %-28s %-14s %12s %12s %12s %12s %10s", "list", "fault", "limit", "below", "at", "above", "no size", "otherwise")));
        for (Origin origin : Origin.values()) {
            Map<String, List<Outcome>> kinds = byKind(singles.stream().filter(o -> o.what().active().kind().origin() == origin).toList());
            kinds.forEach((name, outcomes) -> lines.add(line(origin.word(), name, limit(outcomes), outcomes)));
            lines.add(line(origin.word(), "all", "", kinds.values().stream().flatMap(List::stream).toList()));
        }
        lines.addAll(unseen(singles));
        return lines;
    }

    private static Map<String, List<Outcome>> byKind(List<Outcome> outcomes) {
        return outcomes.stream().collect(Collectors.groupingBy(o -> o.what().active().kind().name(), TreeMap::new, Collectors.toList()));
    }

    private static String limit(List<Outcome> outcomes) {
        FaultKind kind = outcomes.getFirst().what().active().kind();
        return kind.sized() ? String.format(Locale.ROOT, "%.3g %s", kind.limit(), kind.unit()) : "";
    }

    private static String line(String list, String name, String limit, List<Outcome> outcomes) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "  %-10s %-28s %-14s", list, name, limit));
        for (Band band : Band.values()) {
            List<Outcome> here = outcomes.stream().filter(o -> o.what().active().band() == band).toList();
            long noticed = here.stream().filter(DetectionTable::noticed).count();
            line.append(here.isEmpty() ? String.format("%13s", "")
                    : String.format(Locale.ROOT, " %4d/%-4d%3.0f", noticed, here.size(), 100.0 * noticed / here.size()));
        }
        long otherwise = outcomes.stream().filter(o -> o.noticed() == Noticed.HELD).count();
        return line.append(otherwise == 0 ? "" : String.format(Locale.ROOT, " %10d", otherwise)).toString();
    }

    private static boolean noticed(Outcome outcome) {
        return switch (outcome.noticed()) {
            case TRIPPED, NOTICE -> true;
            case HELD, UNSEEN -> false;
        };
    }

    /** Kinds that are not always noticed at or above their limit, each with its reason. */
    private static List<String> unseen(List<Outcome> singles) {
        List<String> lines = new ArrayList<>(List.of("", "Not always noticed at or above the limit, or without a size, within the case's time:"));
        Map<String, List<Outcome>> large = new LinkedHashMap<>(byKind(singles.stream().filter(o -> o.what().active().band() != Band.BELOW).toList()));
        large.forEach((name, outcomes) -> {
            long unseen = outcomes.stream().filter(o -> !noticed(o)).count();
            long crossed = outcomes.stream().filter(o -> !noticed(o) && o.crossed()).count();
            if (unseen > 0) {
                lines.add(String.format(Locale.ROOT, "  %-28s %d of %d, the truth left the envelope in %d: %s", name, unseen, outcomes.size(), crossed,
                        Blind.why(name)));
            }
        });
        return lines;
    }
}
