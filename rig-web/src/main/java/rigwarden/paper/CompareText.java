package rigwarden.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rigwarden.findings.Budget;
import rigwarden.findings.Change;
import rigwarden.findings.Comparison;

/** A pack with itself over time, for a person: what changed, what did not as far as can be told, and what cannot be compared. */
public final class CompareText {
    private CompareText() {}

    /**
     * The whole page, line by line.
     *
     * @param earliest that the others are held against
     * @param later in the order in which they are told of; none of them {@link ComparedRun#stranger a stranger}
     */
    public static List<String> of(ComparedRun earliest, List<ComparedRun> later) {
        List<String> lines = new ArrayList<>();
        lines.add(Spots.say("%s: what changed since %s.", earliest.measured().rig().name(), earliest.words()));
        if (earliest.rehearsal()) {
            lines.add("Rehearsals: every part was emulated, and nothing of this is about your cells.");
        }
        Stream.concat(Stream.of(earliest), later.stream()).forEach(run ->
                run.lost().ifPresent(why -> lines.add("Of " + run.words() + ": " + why)));
        lines.add("Runs on one rig file are taken for one pack, and one shunt and tap board; nobody but you knows whether they are.");
        later.forEach(run -> {
            lines.add("");
            lines.addAll(one(run, Comparison.of(earliest.measured(), run.measured())));
        });
        lines.add("");
        lines.add("Each ± is of the difference, at 95.45 %: what errs alike in both runs has fallen out. It is no certificate.");
        return lines;
    }

    private static List<String> one(ComparedRun run, List<Change> changes) {
        List<Change.Held> held = changes.stream().filter(c -> c instanceof Change.Held).map(Change.Held.class::cast).toList();
        List<String> lines = new ArrayList<>();
        lines.add("IN " + run.words().toUpperCase(Locale.ROOT));
        if (held.stream().anyMatch(Change.Held::seen)) {
            held.stream().filter(Change.Held::seen).forEach(h -> lines.add("  " + seen(h)));
        } else {
            lines.add(held.isEmpty() ? "  Nothing is at like conditions." : "  No difference that these two runs can measure.");
        }
        held.stream().filter(h -> !h.seen()).forEach(h -> lines.add("  " + unseen(h)));
        if (!held.isEmpty()) {
            lines.add("  how sure, and why:");
        }
        held.forEach(h -> lines.addAll(why(h)));
        changes.stream().filter(c -> c instanceof Change.NotHeld).map(Change.NotHeld.class::cast).map(n -> Spots.say("  not compared: %s, %s: %s",
                n.kind().word(), n.what(), n.because())).distinct().forEach(lines::add);
        return lines;
    }

    private static String name(Change.Held held) {
        return held.kind().word().toUpperCase(Locale.ROOT) + ", " + held.what() + ": ";
    }

    private static String figures(Change.Held held) {
        int decimals = Figures.decimals(held.least());
        return Spots.say("%s then, %s %s later", Spots.number(decimals, held.earlier()), Spots.number(decimals, held.later()), held.unit());
    }

    private static String seen(Change.Held held) {
        int decimals = Figures.decimals(held.budget().expanded());
        return name(held) + figures(held) + ": " + (held.difference() < 0 ? "" : "+") + Spots.number(decimals, held.difference()) + " ± "
                + Figures.plain(held.budget().expanded()) + " " + held.unit();
    }

    private static String unseen(Change.Held held) {
        return name(held) + figures(held) + Spots.say(": no difference that this can measure; %s %s would have been seen", Figures.plain(held.least()),
                held.unit());
    }

    private static List<String> why(Change.Held held) {
        List<String> lines = new ArrayList<>();
        lines.add("    " + held.what() + ": " + String.join("; ", held.notes()));
        lines.add(Spots.say("      budget of the difference (u in %s, k = %.2f): %s", held.unit(), held.budget().factor(),
                held.budget().terms().stream().filter(t -> t.standard() > 0.02 * held.budget().combined())
                        .sorted(Comparator.comparingDouble(Budget.Term::standard).reversed())
                        .map(t -> t.name() + " " + Figures.plain(t.standard())).collect(Collectors.joining(", "))));
        if (!held.alike().isEmpty()) {
            lines.add("      errs alike in both and falls out: " + String.join(", ", held.alike()));
        }
        return lines;
    }
}
